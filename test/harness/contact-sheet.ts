/** The contact sheet of the library blocks for the handbook: a page and a picture of each block, made from the library files alone. */
import { svgOf } from '../../server/src/drawing/svg.ts';
import { asFraction, div } from '../../server/src/exact/number.ts';
import { snapshotOf, type BlockView } from '../../server/src/snapshot.ts';
import { documentOf } from '../../server/src/text/document.ts';
import always from '../../server/library/always.quilt';
import traditional from '../../server/library/traditional.quilt';
import { hostOf } from './snapshot.ts';

/** File names and their texts, in the order of the page. */
export function contactSheet(): ReadonlyMap<string, string> {
  const families = [{ title: 'Always there', entries: entriesOf(always) }, ...familiesOf(traditional)];
  const blocks = families.flatMap(({ entries }) => entries);
  const pictures = picturesOf(blocks);
  return new Map([
    ['README.md', pageOf(families, pictures)],
    ...blocks.map(({ name }): [string, string] => [`${name}.svg`, pictures.get(name)?.svg ?? '']),
  ]);
}

interface Entry {
  readonly name: string;
  /** `churn_dash(dash, ground, middle = ground, w = 1)` */
  readonly signature: string;
  /** The parameters that must be given. */
  readonly must: readonly string[];
  /** The comment above the block. */
  readonly comment: string;
}

interface Family {
  readonly title: string;
  readonly entries: readonly Entry[];
}

interface Picture {
  readonly svg: string;
  readonly patches: number;
}

const INTRODUCTION = `# Blocks

The blocks of the library, each drawn by the tool from its own text. This page is made by the tests (\`UPDATE_EXPECTED=1\`); do not edit it by hand.

The blocks that are always there need no import. The others come with \`import "traditional"\`, or with \`import "traditional" as trad\` and are then called \`trad.ohio_star\`. None has a size: it takes that of its cell, or that of a block around it.

\`\`\`
import "traditional"

fabric ink  #22345c
fabric rust #a4502e
fabric sand #eadfc8

block Star 9" {
  ohio_star(ink, sand)
}

block Dash 9" {
  churn_dash(ink, sand, pinwheel(rust, sand))
}

quilt {
  straight 4 by 4
  place {
    Star Dash
    Dash Star
  }
}
\`\`\`

A parameter with \`=\` may be left out. Where a fabric stands in a square by itself, such as the \`middle\` of a frame, a block may stand. A pattern's own block of the same name wins.
`;

/** `// ---- Stars ----` opens a family. */
function familiesOf(text: string): Family[] {
  return text.split(/^\/\/ ---- /m).slice(1).map((part) => ({ title: part.slice(0, part.indexOf(' ----')), entries: entriesOf(part) }));
}

function entriesOf(text: string): Entry[] {
  return [...text.matchAll(/(?:^\/\/ (?!----)(.*)\n)?^block (\w+)\((.*)\) \{/gm)].map(([, comment = '', name = '', parameters = '']) => ({
    name,
    signature: `${name}(${parameters})`,
    must: parameters.split(/, (?![^(]*\))/).filter((parameter) => !parameter.includes('=')),
    comment,
  }));
}

const FABRICS = ['fabric rust #b5562f', 'fabric ink #22345c', 'fabric sand #eadfc8'];

/** Ink on sand; rust, ink and sand. */
function fabricsFor({ must }: Entry): readonly string[] {
  return must.length === 2 ? ['ink', 'sand'] : ['rust', 'ink', 'sand'];
}

function picturesOf(entries: readonly Entry[]): ReadonlyMap<string, Picture> {
  const sizes = new Map([always, traditional].flatMap((text) => blocksOf(text).map((view) => [view.definition.name, sizeOf(view)])));
  const blocks = entries.map((entry) => `block Sheet_${entry.name} ${sizes.get(entry.name) ?? LONGER} {\n  grid 1 by 1\n  ${entry.name}(${fabricsFor(entry).join(', ')})\n}`);
  const views = blocksOf(['import "traditional"', ...FABRICS, ...blocks, ''].join('\n'));
  return new Map(views.map(({ definition, layout, scene }) => {
    const name = definition.name.replace('Sheet_', '');
    return [name, { svg: svgOf(scene, { title: name, idPrefix: `${name}-` }), patches: layout.patches.length }];
  }));
}

function blocksOf(text: string): readonly BlockView[] {
  return snapshotOf(documentOf('sheet.quilt', text), 1, hostOf({ traditional })).blocks;
}

const LONGER = '1 1/2"';

/** `1 1/2" by (1 1/2" * 1/2)`: the longer side is always the same. */
function sizeOf({ layout: { width, height } }: BlockView): string {
  const [flat, high] = [asFraction(div(height, width)), asFraction(div(width, height))];
  if (!flat || !high || flat.n === flat.d) return LONGER;
  return flat.n < flat.d ? `${LONGER} by (1.5" * ${flat.n}/${flat.d})` : `(1.5" * ${high.n}/${high.d}) by ${LONGER}`;
}

function pageOf(families: readonly Family[], pictures: ReadonlyMap<string, Picture>): string {
  return [INTRODUCTION, ...families.map((family) => familyPage(family, pictures))].join('\n');
}

function familyPage({ title, entries }: Family, pictures: ReadonlyMap<string, Picture>): string {
  const rows = entries.map(({ name, signature, comment }) => {
    const { patches = 0 } = pictures.get(name) ?? {};
    return `| ![${name}](${name}.svg) | \`${signature}\`<br>${comment ? `${comment} ` : ''}${patches} patches. |`;
  });
  return [`## ${title}`, '', '| | |', '| --- | --- |', ...rows, ''].join('\n');
}
