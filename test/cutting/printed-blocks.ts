/** Blocks with the cutting lists others print for them, and traditional blocks with the lists the usual rules give. */

export interface PrintedBlock {
  readonly name: string;
  readonly fabrics: readonly string[];
  /** In the language; the block is called as its name without blanks. */
  readonly text: string;
  /** `fabric: count of size how`, as the page has it. */
  readonly cuts: readonly string[];
}

const ONCE = ' once on the diagonal';
const TWICE = ' twice on the diagonal';

export const PRINTED_BLOCKS: readonly PrintedBlock[] = [
  {
    // American Patchwork & Quilting, https://www.allpeoplequilt.com/quilt-patterns/quilt-blocks/colorado-quilt-block
    name: 'Colorado',
    fabrics: ['white', 'purple'],
    text: `block Colorado 8" {
  turned 4 {
    white/purple purple\\white
    purple\\white white/purple
  }
}`,
    cuts: [`white: 8 of 2 7/8${ONCE}`, `purple: 8 of 2 7/8${ONCE}`],
  },
  {
    // American Patchwork & Quilting, https://www.allpeoplequilt.com/quilt-patterns/quilt-blocks/pinwheel-star-quilt-block
    name: 'PinwheelStar',
    fabrics: ['black', 'fuchsia', 'turquoise'],
    text: `block Goose 6" by 3" {
  box 2 by 1
  patch black 0,1 1,0 2,1
  patch turquoise 0,0 1,0 0,1
  patch turquoise 1,0 2,0 2,1
}
block Middle 6" {
  turned 4 {
    (black\\fuchsia)/black
  }
}
block PinwheelStar 12" {
  grid 1 2 1 by 1 2 1
  black     Goose      black
  Goose@270 Middle     Goose@90
  black     Goose@180  black
}`,
    cuts: [`black: 1 of 7 1/4${TWICE}`, `black: 1 of 4 1/4${TWICE}`, `black: 2 of 3 7/8${ONCE}`, 'black: 4 of 3 1/2', `fuchsia: 1 of 4 1/4${TWICE}`, `turquoise: 4 of 3 7/8${ONCE}`],
  },
  {
    // https://quilttherapy.com/?p=20830
    name: 'CrossroadsStar',
    fabrics: ['pink', 'purple', 'white'],
    text: `block CrossroadsStar 12" {
  (white|(purple/white))-((purple/white)|white)  (pink\\white)/(white\\pink)  ((white\\purple)|white)-(white|(white\\purple))
  (white\\pink)/(pink\\white)                    purple                       (white\\pink)/(pink\\white)
  ((white\\purple)|white)-(white|(white\\purple))  (pink\\white)/(white\\pink)  (white|(purple/white))-((purple/white)|white)
}`,
    cuts: [`pink: 2 of 5 1/4${TWICE}`, `purple: 4 of 2 7/8${ONCE}`, 'purple: 1 of 4 1/2', 'white: 8 of 2 1/2', `white: 2 of 5 1/4${TWICE}`, `white: 4 of 2 7/8${ONCE}`],
  },
  {
    // American Patchwork & Quilting, Serendipity, https://www.allpeoplequilt.com/quilt-patterns/quilt-throws/serendipity
    name: 'NinePatch',
    fabrics: ['light', 'dark'],
    text: `block NinePatch 9" {
  dark light dark
  light dark light
  dark light dark
}`,
    cuts: ['light: 4 of 3 1/2', 'dark: 5 of 3 1/2'],
  },
  {
    // American Patchwork & Quilting, https://www.allpeoplequilt.com/quilt-patterns/quilt-blocks/mothers-favorite-quilt-block
    name: 'MothersFavorite',
    fabrics: ['navy', 'blue', 'white'],
    text: `block Corner 4" {
  box 4 by 4
  patch navy  0,0 4,0 0,4
  patch white 4,0 4,2 2,2
  patch white 2,2 2,4 0,4
  patch white 2,2 4,2 2,4
  patch navy  4,2 4,4 2,4
}
block Low 4" by 2" {
  blue
  corner white 2" top_left top_right
}
block High 4" by 2" {
  white
  corner blue 2" top_left top_right
}
block Side 4" {
  High
  Low
}
block MothersFavorite 12" {
  Corner@180 Side      Corner@270
  Side@270   navy      Side@90
  Corner@90  Side@180  Corner
}`,
    cuts: [
      `navy: 2 of 4 7/8${ONCE}`,
      'navy: 1 of 4 1/2',
      `navy: 2 of 2 7/8${ONCE}`,
      'blue: 4 of 2 1/2 x 4 1/2',
      'blue: 8 of 2 1/2',
      'white: 4 of 2 1/2 x 4 1/2',
      `white: 6 of 2 7/8${ONCE}`,
      'white: 8 of 2 1/2',
    ],
  },
  {
    // American Patchwork & Quilting, American Beauty, https://www.allpeoplequilt.com/quilt-patterns/quilt-blocks/american-beauty-quilt-block
    // (the middle and the corners of the unit; its star points are templates and are left plain here)
    name: 'AmericanBeauty',
    fabrics: ['red', 'cream', 'point'],
    text: `block Tip 3" {
  point
  corner cream 1 1/2" top_left
}
block AmericanBeauty 9" {
  cream Tip   cream
  Tip   red   Tip
  cream Tip   cream
}`,
    cuts: ['red: 1 of 3 1/2', 'cream: 4 of 3 1/2', 'cream: 4 of 2', 'point: 4 of 3 1/2'],
  },
  {
    // Eight-pointed star, block = 3.41 diamond edges: Karen Combs, https://karencombs.com/page.php?ID=31; for 12": squares 4 1/8, triangles
    // 6 1/4, diamonds from 3" strips (computed there from her rule).
    name: 'Star',
    fabrics: ['point', 'sky'],
    text: `let tip = 12" / (2 + sqrt(2))
block Star 12" {
  turned 4 {
    patch point 6,6  (tip),(tip)  (tip),0  6,(6 - tip)
    patch point 6,6  6,(6 - tip)  (12 - tip),0  (12 - tip),(tip)
    patch sky   0,0  (tip),0  (tip),(tip)  0,(tip)
    patch sky   (tip),0  (12 - tip),0  6,(6 - tip)
  }
}`,
    cuts: ['point: 8 of 3 x 6 3/4 template', `sky: 1 of 6 1/4${TWICE}`, 'sky: 4 of 4 1/8'],
  },
];

/** Traditional blocks, drawn in one fabric: shape, finished, cut, patches, squares or rectangles to cut. */
export const TRADITIONAL: readonly { readonly name: string; readonly text: string; readonly cuts: readonly (readonly [string, string, string, number, number])[] }[] = [
  { name: 'FourPatch', text: 'block FourPatch 12" {\n a a\n a a\n}', cuts: [['square', '6', '6 1/2', 4, 4]] },
  { name: 'NinePatch', text: 'block NinePatch 12" {\n a a a\n a a a\n a a a\n}', cuts: [['square', '4', '4 1/2', 9, 9]] },
  {
    name: 'FriendshipStar',
    text: 'block FriendshipStar 12" {\n a a/a a\n a\\a a a/a\n a a\\a a\n}',
    cuts: [['half-square triangle', '4', '4 7/8', 8, 4], ['square', '4', '4 1/2', 5, 5]],
  },
  {
    name: 'SawtoothStar',
    text: 'block Goose 2 by 1 {\n box 2 by 1\n patch a 0,1 1,0 2,1\n patch a 0,0 1,0 0,1\n patch a 1,0 2,0 2,1\n}\nblock SawtoothStar 12" {\n grid 1 2 1 by 1 2 1\n a Goose a\n Goose@270 a Goose@90\n a Goose@180 a\n}',
    cuts: [['half-square triangle', '3', '3 7/8', 8, 4], ['quarter-square triangle', '6', '7 1/4', 4, 1], ['square', '3', '3 1/2', 4, 4], ['square', '6', '6 1/2', 1, 1]],
  },
  { name: 'Pinwheel', text: 'block Pinwheel 12" {\n turned 4 {\n a/a\n }\n}', cuts: [['half-square triangle', '6', '6 7/8', 8, 4]] },
  {
    name: 'Dutch',
    text: 'block Goose 2 by 1 {\n box 2 by 1\n patch a 0,1 1,0 2,1\n patch a 0,0 1,0 0,1\n patch a 1,0 2,0 2,1\n}\nblock Pair {\n grid 2 by 1 1\n Goose\n Goose\n}\nblock Dutch 12" {\n turned 4 {\n Pair\n }\n}',
    cuts: [['half-square triangle', '3', '3 7/8', 16, 8], ['quarter-square triangle', '6', '7 1/4', 8, 2]],
  },
  { name: 'DoubleX', text: 'block DoubleX 6" {\n a a/a a/a\n a/a a a/a\n a/a a/a a\n}', cuts: [['half-square triangle', '2', '2 7/8', 12, 6], ['square', '2', '2 1/2', 3, 3]] },
  {
    name: 'JacobsLadder',
    text: 'block Four {\n a a\n a a\n}\nblock JacobsLadder 12" {\n Four a/a Four\n a/a Four a/a\n Four a/a Four\n}',
    cuts: [['half-square triangle', '4', '4 7/8', 8, 4], ['square', '2', '2 1/2', 20, 20]],
  },
  {
    name: 'BearsPaw',
    text: 'block Paw {\n a/a a/a a\n a < a/a\n ^ ^ a/a\n}\nblock BearsPaw 14" {\n grid 3 1 3 by 3 1 3\n Paw@270 a Paw\n a a a\n Paw@180 a Paw@90\n}',
    cuts: [['half-square triangle', '2', '2 7/8', 32, 16], ['rectangle', '2 x 6', '2 1/2 x 6 1/2', 4, 4], ['square', '2', '2 1/2', 5, 5], ['square', '4', '4 1/2', 4, 4]],
  },
  {
    name: 'LogCabin',
    text: 'block LogCabin 10 1/2" {\n centre a 1 1/2"\n round 1 1/2" a a a a\n round 1 1/2" a a a a\n round 1 1/2" a a a a\n}',
    cuts: [
      ['rectangle', '1 1/2 x 10 1/2', '2 x 11', 1, 1],
      ['rectangle', '1 1/2 x 3', '2 x 3 1/2', 2, 2],
      ['rectangle', '1 1/2 x 4 1/2', '2 x 5', 2, 2],
      ['rectangle', '1 1/2 x 6', '2 x 6 1/2', 2, 2],
      ['rectangle', '1 1/2 x 7 1/2', '2 x 8', 2, 2],
      ['rectangle', '1 1/2 x 9', '2 x 9 1/2', 2, 2],
      ['square', '1 1/2', '2', 2, 2],
    ],
  },
  { name: 'RailFence', text: 'block RailFence 12" {\n grid 1 1 1 1 by 1\n a a a a\n}', cuts: [['rectangle', '3 x 12', '3 1/2 x 12 1/2', 4, 4]] },
];
