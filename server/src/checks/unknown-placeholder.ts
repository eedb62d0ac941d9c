/** `unknown-placeholder`: braces in the wording of steps that hold no value the pattern has. */
import { placeholdersIn, valueAt, type SizedQuilt } from '../cutting/placeholders.ts';
import { quantityNames } from '../cutting/quantities.ts';
import { isZero } from '../exact/number.ts';
import type { Document } from '../text/document.ts';
import { nearestWord } from '../text/nearest.ts';
import { placeIn, type Place } from '../text/place.ts';
import type { Problem } from '../text/problem.ts';
import { quiltExample } from './example.ts';
import type { CheckContext, Rule } from './rule.ts';

const worded = (path: string): string => `${quiltExample('block Buoy 4" {\n  ink sand\n  sand ink\n}')}steps before Buoy { "Make {${path}} blocks." }\n`;

export const unknownPlaceholder: Rule = {
  id: 'unknown-placeholder',
  severity: 'error',
  when: 'later',
  title: 'Braces that hold no value',
  why: 'In `about` and in the wording of `steps`, braces stand for a value that is worked out: `{Buoy.count}` is always the count of the quilt in hand, in every size. Braces that name nothing would be printed as they stand, in the middle of a sentence.',
  bad: worded('Buoy.cuont'),
  good: worded('Buoy.count'),
  mends: ['Take the name that the message suggests, or one from the list that the editor offers behind the brace.', 'Leave the braces out and write the words.'],
  find: (context) => {
    const quilts = laidOut(context);
    return quilts.length === 0 ? [] : wordings(context).flatMap((place) => inText(place, quilts, context));
  },
};

/** The texts that are filled in: `about` and those of `steps`. */
function wordings({ pattern, tree }: CheckContext): readonly Place[] {
  const said = tree.statements.flatMap(({ node, body }) => (node.kind === 'pattern' && body ? body.statements : []));
  const about = said.flatMap(({ node, line }) => (node.kind === 'about' && node.text ? [node.text.place ?? placeIn(line, node.text)] : []));
  return [...about, ...pattern.steps.flatMap(({ texts }) => texts.map(({ place }) => place))];
}

/** The quilts that are made; one that could not be laid out has its own problem. */
function laidOut({ pattern, quilts }: CheckContext): readonly SizedQuilt[] {
  const made = pattern.sizes.length > 0 ? quilts.filter(({ size }) => size !== undefined) : quilts;
  return made
    .filter(({ layout }) => !isZero(layout.width) && [...layout.spec.findings, ...layout.findings].every(({ rule }) => rule === 'not-yet'))
    .map((quilt): SizedQuilt => ({ name: quilt.size?.name ?? null, layout: quilt.layout, get plan() { return quilt.plan; } }));
}

function inText(place: Place, quilts: readonly SizedQuilt[], { tree, pattern }: CheckContext): readonly Problem[] {
  return piecesOf(place, tree.document).flatMap((piece) =>
    placeholdersIn(piece.line.text.slice(piece.from, piece.to)).flatMap(({ path, from, to }): Problem[] => {
      const without = quilts.find((quilt) => !valueAt(path, quilt, quilts, pattern.rules));
      if (!without) return [];
      return [{ rule: 'unknown-placeholder', place: placeIn(piece.line, { from: piece.from + from, to: piece.from + to }), message: messageFor(path, without, quilts) }];
    }),
  );
}

function messageFor(path: string, quilt: SizedQuilt, quilts: readonly SizedQuilt[]): string {
  if (path === '') return 'these braces are empty: name a value, as in `{width}`';
  const where = quilts.length > 1 && quilt.name !== null ? ` in ${quilt.name}` : '';
  const sizes = quilts.flatMap(({ name }) => (name === null ? [] : quantityNames(quilt).map((each) => `${name}.${each}`)));
  const near = nearestWord(path, [...quantityNames(quilt), ...sizes]);
  return `there is no value \`${path}\`${where}${near === undefined ? '' : `; did you mean \`${near}\`?`}`;
}

/** A text line by line. */
function piecesOf(place: Place, document: Document): readonly Place[] {
  const { line, endLine } = place;
  if (!endLine) return [place];
  const lines = document.lines.slice(document.numberOf(line), document.numberOf(endLine) + 1);
  return lines.map((each) => placeIn(each, { from: each === line ? place.from : 0, to: each === endLine ? place.to : each.text.length }));
}
