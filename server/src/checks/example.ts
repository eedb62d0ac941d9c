/** The fabrics that the rules' examples are sewn from, so that each example shows its own point only. */

const FABRICS = `fabric ink  #22345c "Night ferry"
fabric sand #eadfc8 "Dry sand"
`;

/** A whole pattern: two fabrics, then the lines given. */
export function example(rest: string): string {
  return `${FABRICS}\n${rest}`;
}

/** A whole pattern that also sets the block \`Buoy\` of the lines given, four times. */
export function quiltExample(rest: string): string {
  return example(`${rest}\nquilt {\n  straight 2 by 2\n  place { Buoy }\n}\n`);
}

/** A block of patches by their coordinates, 4" by 2" in a box of 2 by 1. */
export function gooseExample(patches: string): string {
  return example(`block Goose 4" by 2" {\n  box 2 by 1\n${patches}}\n`);
}

/** The same with patches that tile it. */
export const WHOLE_GOOSE = gooseExample('  patch ink  0,1 1,0 2,1\n  patch sand 0,0 1,0 0,1\n  patch sand 1,0 2,0 2,1\n');
