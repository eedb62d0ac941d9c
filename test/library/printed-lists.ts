/** Cutting lists that others print for blocks of the library. Sizes and counts are theirs; where theirs are rougher, it says so. */

export interface PrintedList {
  readonly title: string;
  readonly source: string;
  /** The block with the fabrics as the page names them. */
  readonly cell: string;
  readonly fabrics: readonly string[];
  /** The finished side in inches. */
  readonly side: string;
  /** `fabric: count of size how`. */
  readonly cuts: readonly string[];
}

const ONCE = ' once on the diagonal';
const TWICE = ' twice on the diagonal';
const APQ = 'American Patchwork & Quilting, https://www.allpeoplequilt.com/quilt-patterns';

export const PRINTED_LISTS: readonly PrintedList[] = [
  {
    title: 'Nine-Patch', source: `${APQ}/quilt-throws/serendipity`,
    cell: 'nine_patch(dark, light)', fabrics: ['light', 'dark'], side: '9',
    cuts: ['light: 4 of 3 1/2', 'dark: 5 of 3 1/2'],
  },
  {
    title: 'Double Nine-Patch', source: `${APQ}/quilt-blocks/double-nine-patch-quilt-block`,
    cell: 'double_nine_patch(green, white)', fabrics: ['white', 'green'], side: '9',
    cuts: ['white: 4 of 3 1/2', 'white: 20 of 1 1/2', 'green: 25 of 1 1/2'],
  },
  {
    title: 'Colorado', source: `${APQ}/quilt-blocks/colorado-quilt-block`,
    cell: 'colorado(purple, white)', fabrics: ['white', 'purple'], side: '8',
    cuts: [`white: 8 of 2 7/8${ONCE}`, `purple: 8 of 2 7/8${ONCE}`],
  },
  {
    title: 'Pinwheel Star', source: `${APQ}/quilt-blocks/pinwheel-star-quilt-block`,
    cell: 'pinwheel_star(turquoise, fuchsia, black)', fabrics: ['black', 'fuchsia', 'turquoise'], side: '12',
    cuts: [`black: 1 of 7 1/4${TWICE}`, `black: 1 of 4 1/4${TWICE}`, `black: 2 of 3 7/8${ONCE}`, 'black: 4 of 3 1/2', `fuchsia: 1 of 4 1/4${TWICE}`, `turquoise: 4 of 3 7/8${ONCE}`],
  },
  {
    title: "Mother's Favorite", source: `${APQ}/quilt-blocks/mothers-favorite-quilt-block`,
    cell: 'mothers_favorite(navy, blue, white)', fabrics: ['navy', 'blue', 'white'], side: '12',
    cuts: [
      `navy: 2 of 4 7/8${ONCE}`, 'navy: 1 of 4 1/2', `navy: 2 of 2 7/8${ONCE}`, 'blue: 4 of 2 1/2 x 4 1/2', 'blue: 8 of 2 1/2',
      'white: 4 of 2 1/2 x 4 1/2', `white: 6 of 2 7/8${ONCE}`, 'white: 8 of 2 1/2',
    ],
  },
  {
    title: 'Churn Dash', source: 'http://fabricjunctionjewels.blogspot.com/2018/01/churn-dash.html',
    cell: 'hole_in_the_barn_door(medium, dark, light)', fabrics: ['light', 'medium', 'dark'], side: '6',
    cuts: [`light: 2 of 2 7/8${ONCE}`, 'light: 4 of 1 1/2 x 2 1/2', 'light: 1 of 2 1/2', 'medium: 4 of 1 1/2 x 2 1/2', `dark: 2 of 2 7/8${ONCE}`],
  },
  {
    title: 'Ohio Star', source: `${APQ}/quilt-blocks/ohio-star-quilt-block`,
    cell: 'ohio_star(orange, blue)', fabrics: ['blue', 'orange'], side: '10 1/2',
    cuts: [`blue: 2 of 4 3/4${TWICE}`, 'blue: 4 of 4', `orange: 2 of 4 3/4${TWICE}`, 'orange: 1 of 4'],
  },
  {
    title: 'Ohio Star in three fabrics', source: 'https://quiltcg.com/2015/04/03/april-quilt-block-of-the-month/',
    cell: 'ohio_star(red, cream, blue)', fabrics: ['cream', 'blue', 'red'], side: '12',
    cuts: ['cream: 4 of 4 1/2', `cream: 2 of 5 1/4${TWICE}`, 'blue: 1 of 4 1/2', `red: 2 of 5 1/4${TWICE}`],
  },
  {
    title: 'Windmill', source: `${APQ}/quilt-blocks/windmill-quilt-block`,
    cell: 'double_pinwheel(blue, red, white)', fabrics: ['red', 'white', 'blue'], side: '8',
    cuts: [`red: 1 of 5 1/4${TWICE}`, `white: 1 of 5 1/4${TWICE}`, `blue: 2 of 4 7/8${ONCE}`],
  },
  {
    title: 'Kansas Troubles', source: 'https://joanne-threadhead.blogspot.com/2010/12/block-9.html',
    cell: 'kansas_troubles(green, red, ground)', fabrics: ['ground', 'green', 'red'], side: '9',
    cuts: [`ground: 2 of 5 3/8${ONCE}`, `ground: 8 of 2${ONCE}`, 'ground: 4 of 1 5/8', `green: 12 of 2${ONCE}`, `red: 2 of 3 1/8${ONCE}`],
  },
  {
    title: 'Contrary Wife', source: 'http://delawarequilts.com/BOMs/ContraryWife/index.html',
    cell: 'contrary_wife(gold, blue, white)', fabrics: ['gold', 'white', 'blue'], side: '6',
    cuts: ['gold: 5 of 2 1/2', `white: 2 of 2 7/8${ONCE}`, `blue: 2 of 2 7/8${ONCE}`],
  },
  {
    title: "Double X, there Old Maid's Puzzle", source: 'http://delawarequilts.com/BOMs/OldMaidsPuzzle/index.html',
    cell: 'double_x(blue, white)', fabrics: ['white', 'blue'], side: '6',
    cuts: [`white: 3 of 2 7/8${ONCE}`, 'white: 3 of 2 1/2', `blue: 3 of 2 7/8${ONCE}`],
  },
  {
    // Its four-patches are cut from strips of 2 1/2" by 25", in ten pieces of 2 1/2".
    title: "Jacob's Ladder", source: 'http://delawarequilts.com/BOMs/JacobsLadder/index.html',
    cell: 'jacobs_ladder(dark, dark, light)', fabrics: ['light', 'dark'], side: '12',
    cuts: [`light: 2 of 4 7/8${ONCE}`, 'light: 10 of 2 1/2', `dark: 2 of 4 7/8${ONCE}`, 'dark: 10 of 2 1/2'],
  },
  {
    title: 'Maple Leaf', source: 'https://ludlowquiltandsew.co.uk/quilt-block-patterns/maple-leaf-quilt-block/',
    cell: 'maple_leaf(brown, blue)', fabrics: ['brown', 'blue'], side: '9',
    cuts: ['brown: 4 of 3 1/2', `brown: 2 of 3 7/8${ONCE}`, `blue: 2 of 3 7/8${ONCE}`, 'blue: 1 of 3 1/2', 'blue: 2 of 3'],
  },
  {
    // The page cuts the two halves of the corner larger and trims them: 7/8 is exact.
    title: 'Attic Windows', source: 'http://quiltingpassion.com/blocks/pieced/attic/',
    cell: 'attic_windows(a, b, c, 3)', fabrics: ['a', 'b', 'c'], side: '8',
    cuts: ['a: 1 of 6 1/2', 'b: 1 of 2 1/2 x 6 1/2', `b: 1 of 2 7/8${ONCE}`, 'c: 1 of 2 1/2 x 6 1/2', `c: 1 of 2 7/8${ONCE}`],
  },
  {
    // Block = 3.41 diamond edges; squares 4 1/8, triangles 6 1/4, diamonds from 3" strips.
    title: 'Eight-pointed star', source: 'Karen Combs, https://karencombs.com/page.php?ID=31',
    cell: 'le_moyne_star(point, point, sky)', fabrics: ['point', 'sky'], side: '12',
    cuts: ['point: 8 of 3 x 6 3/4 template', `sky: 1 of 6 1/4${TWICE}`, 'sky: 4 of 4 1/8'],
  },
];

/** Card Trick: quarter squares of the finished unit + 1 1/4, half squares + 1 and trimmed (7/8 is exact). http://mackandmabel.blogspot.com/2014_01_01_archive.html */
export const CARD_TRICK: readonly (readonly [string, string, string])[] = [['12', '5 1/4', '4 7/8'], ['9', '4 1/4', '3 7/8'], ['6', '3 1/4', '2 7/8']];

/** Cake Stand of 5": finished sizes and patches. http://inklingosampler.blogspot.com/2009/09/cake-stand.html */
export const CAKE_STAND: readonly string[] = [
  'basket: 1 half-square triangle 3 x 3', 'basket: 8 half-square triangle 1 x 1', 'ground: 1 half-square triangle 2 x 2',
  'ground: 1 half-square triangle 3 x 3', 'ground: 1 square 1 x 1', 'ground: 2 rectangle 1 x 3', 'ground: 6 half-square triangle 1 x 1',
];
