/** The steps for a block that is sewn on paper: its sheets, the order on them, and how its sections are joined. Common practice, no source. */
import { pieceLabel } from '../cutting/labels.ts';
import type { BlockLayout } from '../geometry/layout.ts';
import type { Rules } from '../model/pattern.ts';
import { foundationOf, type Foundation } from '../piecing/foundation.ts';
import { plain } from './markdown.ts';
import { TEXTS } from './steps-texts.ts';
import { rawSize } from './steps-units.ts';
import { counted, listed, type Printer } from './words.ts';

export interface PaperBlock {
  readonly name: string;
  readonly count: number;
  readonly layout: BlockLayout;
}

/** Nothing for a block that cannot be sewn so. */
export function paperLines({ name, count, layout }: PaperBlock, { rules, print }: { readonly rules: Rules; readonly print: Printer }): readonly string[] {
  const plan = foundationOf(layout);
  if (plan.kind === 'none') return [];
  const { sections } = plan.foundation;
  const seam = print.length(rules.seam);
  const copies = counted(count, 'copy', 'copies');
  const isOne = sections.length === 1;
  return [
    `Print ${isOne ? 'the sheet' : `the ${sections.length} sheets`} of ${plain(name)} in \`templates.pdf\` at 100 %, ${isOne ? copies : `${copies} of each`}.`,
    isOne ? 'It shows the block mirrored.' : 'They show the block mirrored.',
    'Lay the first fabric on the blank side of the paper, its wrong side to the paper. It covers its patch and a seam around it.',
    'Lay the next fabric on it, right sides together. Turn the paper over, and sew on the printed line between the two numbers, a few stitches further at both ends.',
    `Trim the allowance to ${seam}, open the fabric, and press it. Go on in the order of the numbers.`,
    'Trim the sheet along its dashed outer line.',
    ...joinLines(plan.foundation),
    TEXTS.measure(print.widthByHeight(rawSize(layout, rules.seam)), count),
    'Take the paper out when the block is sewn to its neighbours.',
  ];
}

/** Joins in their order; a sheet that takes joined sections in as its first piece is told after them. */
function joinLines({ sections, joins }: Foundation): readonly string[] {
  const named = (some: readonly number[]): string => listed(some.map((section) => pieceLabel(section)));
  return sections.flatMap(({ steps }, i) => {
    const unit = steps[0]?.sections;
    return [
      ...(unit ? [`The first piece of section ${pieceLabel(i)} is ${named(unit)}, sewn together.`] : []),
      ...joins.filter(({ after }) => after === i + 1).map(({ parts: [one, other] }) => `Sew ${named(one)} to ${named(other)} along the line, through both papers.`),
    ];
  });
}
