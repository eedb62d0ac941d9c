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
