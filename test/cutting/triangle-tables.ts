/** Cut sizes as others print them, in inches with 1/4" seams: finished → cut. */

/** North Hampshire Quilters, http://north-hampshire-quilters.org.uk/hblk402b.htm; All People Quilt; Delaware Quilts; Quilter's Cache. */
export const HALF_SQUARE = [
  ['1 1/2', '2 3/8'],
  ['2', '2 7/8'],
  ['2 7/8', '3 3/4'],
  ['3', '3 7/8'],
  ['4', '4 7/8'],
  ['6', '6 7/8'],
] as const;

/** North Hampshire Quilters; All People Quilt (Lone Star, Serendipity); quiltcg Ohio Star; Quilter's Cache Scrapbagger. */
export const QUARTER_SQUARE = [
  ['3', '4 1/4'],
  ['4', '5 1/4'],
  ['6', '7 1/4'],
  ['9', '10 1/4'],
] as const;

/** Flying geese, height by width: four small squares and one large one. https://alinequilts.blogspot.com/2011/03/fast-easy-flying-geese-no-more-tears.html */
export const GEESE = [
  ['1', '2', '1 7/8', '3 1/4'],
  ['1 1/4', '2 1/2', '2 1/8', '3 3/4'],
  ['1 1/2', '3', '2 3/8', '4 1/4'],
  ['1 3/4', '3 1/2', '2 5/8', '4 3/4'],
  ['2', '4', '2 7/8', '5 1/4'],
  ['2 1/4', '4 1/2', '3 1/8', '5 3/4'],
  ['2 1/2', '5', '3 3/8', '6 1/4'],
  ['2 3/4', '5 1/2', '3 5/8', '6 3/4'],
  ['3', '6', '3 7/8', '7 1/4'],
] as const;

/** Stitch and flip: finished corner → square. McCall's Quilting pattern 303; heritagethreads.wordpress.com 2016/06/21; sewingwithstitcher.com block 10. */
export const FLIPPED = [
  ['3', '3 1/2'],
  ['1 1/2', '2'],
  ['2', '2 1/2'],
] as const;

/**
 * On-point setting triangles: block → square cut twice, square cut once. Hohn 2002,
 * http://www.quilterscache.com/H/howtomakesettingtriangles.html (5, 6, 8, 9, 12, 14, 15); Christa Quilts,
 * https://christaquilts.com/quilty-math/ (3 to 12 1/2; she prints 3 1/2 for the corner of a 3 1/2" block, where 3 3/8 is enough);
 * http://phoebemoon.com/tutorials/on-point.htm, to the next quarter (17 and 18; the corner of 17, 13, and of 20, 15 1/4, are more
 * than is needed, and the 21 it prints for the side of 14 is too small by 0.006"). Charts that add 1 1/4 and 7/8 before rounding
 * give 24, 25 3/8 and 29 5/8 for the sides of 16, 17 and 20: an eighth more than the seam needs.
 */
export const SETTING = [
  ['3', '5 1/2', '3'],
  ['3 1/2', '6 1/4', '3 3/8'],
  ['4 1/2', '7 5/8', '4 1/8'],
  ['5', '8 3/8', '4 1/2'],
  ['6', '9 3/4', '5 1/8'],
  ['6 1/2', '10 1/2', '5 1/2'],
  ['7 1/2', '11 7/8', '6 1/4'],
  ['8', '12 5/8', '6 5/8'],
  ['9', '14', '7 1/4'],
  ['9 1/2', '14 3/4', '7 5/8'],
  ['10 1/2', '16 1/8', '8 3/8'],
  ['11', '16 7/8', '8 3/4'],
  ['12', '18 1/4', '9 3/8'],
  ['12 1/2', '19', '9 3/4'],
  ['14', '21 1/8', '10 7/8'],
  ['15', '22 1/2', '11 1/2'],
  ['16', '23 7/8', '12 1/4'],
  ['17', '25 1/4', '12 7/8'],
  ['18', '26 3/4', '13 5/8'],
  ['20', '29 1/2', '15'],
] as const;

/** Diagonals computed with 60 digits of √2: block → block · √2, block / √2. */
export const DIAGONALS = [
  ['6', 8.48528, 4.24264],
  ['9', 12.72792, 6.36396],
  ['12', 16.97056, 8.48528],
  ['20', 28.28427, 14.14214],
] as const;
