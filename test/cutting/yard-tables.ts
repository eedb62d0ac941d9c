/**
 * Squares and strips from a length of cloth. Half yard of 42": https://petiterepublic.com/needlewomen/how-many-yards-of-fabric-do-i-need-for-a-patchwork-quilt.html
 * (3, 3 1/2, 4, 4 1/2 as printed there; the other rows are the same grid, counted). Fat quarter of 18 by 22:
 * https://docsbay.net/number-of-squares-from-a-fat-quarter. 88 squares of 4 1/2 from 40" cloth: 8 a strip, 11 strips, 49 1/2":
 * judysquiltsandthings, 3 May 2011. 100 squares of 3 1/2 from 44": 12 a strip, 9 strips: http://www.harriger.com/inch2yard.htm.
 */
export const HALF_YARD_OF_42 = [
  ['2', 189],
  ['2 1/2', 112],
  ['3', 84],
  ['3 1/2', 60],
  ['4', 40],
  ['4 1/2', 36],
  ['5', 24],
  ['5 1/2', 21],
  ['6', 21],
  ['6 1/2', 12],
  ['8 1/2', 8],
  ['12 1/2', 3],
] as const;

export const FAT_QUARTER = [
  ['2', 99],
  ['2 1/2', 56],
  ['3', 42],
  ['3 1/2', 30],
  ['4', 20],
  ['4 1/2', 16],
  ['5', 12],
  ['5 1/2', 12],
  ['6', 9],
  ['6 1/2', 6],
] as const;

/** width of cloth, square, how many, squares a strip, strips, length */
export const STRIPS_OF_SQUARES = [
  ['40', '4 1/2', 88, 8, 11, '49 1/2'],
  ['44', '3 1/2', 100, 12, 9, '31 1/2'],
  ['40', '4 7/8', 8, 8, 1, '4 7/8'],
  ['42', '8 1/2', 49, 4, 13, '110 1/2'],
  ['42', '3 1/2', 128, 12, 11, '38 1/2'],
  ['42', '6 1/2', 82, 6, 14, '91'],
] as const;
