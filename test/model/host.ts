/** Patterns of texts, for tests of the model: parser and model without a disk; findings as short lines. */
import { buildPattern, type ModelHost } from '../../server/src/model/build.ts';
import type { Finding } from '../../server/src/model/finding.ts';
import { defaultInstance, sampleInstance } from '../../server/src/model/instantiate.ts';
import type { BlockInstance, CellSpec, Pattern, QuiltSpec } from '../../server/src/model/pattern.ts';
import { specifyQuilt } from '../../server/src/model/quilt.ts';
import { parse } from '../../server/src/syntax/parse.ts';
import type { Tree } from '../../server/src/syntax/tree.ts';
import { documentOf } from '../../server/src/text/document.ts';
import type { Place } from '../../server/src/text/place.ts';
import always from '../../server/library/always.quilt';

export type Files = Readonly<Record<string, string>>;

const LIBRARY: Tree = parse(documentOf('library:always.quilt', always));

/** The tool's library, and files by path; a path that begins with `../` is outside, one that ends in `.png` unreadable. */
export function hostOf(files: Files = {}): ModelHost {
  const trees = new Map(Object.entries(files).map(([path, text]) => [path, parse(documentOf(path, text))]));
  return {
    library: [LIBRARY],
    import: (path) => trees.get(path) ?? (path.startsWith('../') ? 'outside' : path.endsWith('.png') ? 'unreadable' : 'missing'),
  };
}

export function patternOf(text: string, files: Files = {}): Pattern {
  return buildPattern(parse(documentOf('test.quilt', text)), hostOf(files));
}

/** The instance of a block of the file: with its defaults, else a sample. */
export function instanceOf(pattern: Pattern, name: string): BlockInstance {
  const definition = pattern.blocks.get(name);
  const instance = definition && (defaultInstance(pattern, definition) ?? sampleInstance(pattern, definition));
  if (!instance) throw new Error(`No instance of ${name}.`);
  return instance;
}

export function quiltOf(pattern: Pattern, size?: string, colorway?: string): QuiltSpec {
  return specifyQuilt(
    pattern,
    pattern.sizes.find(({ name }) => name === size),
    pattern.colorways.find(({ name }) => name === colorway),
  );
}

/** Everything that is wrong, as a checker sees it: declarations, the file's blocks, the quilt in every size and colourway. */
export function findingsIn(pattern: Pattern): readonly Finding[] {
  const quilts = pattern.quilt ? [undefined, ...pattern.sizes].flatMap((size) => [undefined, ...pattern.colorways].map((colorway) => specifyQuilt(pattern, size, colorway))) : [];
  const blocks = [...pattern.blocks.values()]
    .filter(({ origin }) => origin === 'file')
    .flatMap((definition) => defaultInstance(pattern, definition) ?? sampleInstance(pattern, definition) ?? []);
  const instances = new Set<BlockInstance>();
  const add = (instance: BlockInstance): void => {
    if (instances.has(instance)) return;
    instances.add(instance);
    instance.nested?.forEach(add);
  };
  [...blocks, ...quilts.flatMap(blocksIn)].forEach(add);
  return [...pattern.findings, ...[...instances].flatMap(({ findings }) => findings), ...quilts.flatMap(({ findings }) => findings)];
}

/** `[text] rule: facts`, each once, in the order of the text; findings in other files begin with the file. */
export function linesOf(pattern: Pattern): readonly string[] {
  const { document } = pattern.tree;
  const order = (finding: Finding): number => document.numberOf(finding.place.line) * 10_000 + finding.place.from;
  const sorted = [...findingsIn(pattern)].sort((a, b) => order(a) - order(b));
  return [...new Set(sorted.map((finding) => `${fileOf(finding, document.source)}${textAt(finding.place)} ${finding.rule}: ${factsOf(finding)}`))];
}

function fileOf({ place }: Finding, own: string): string {
  return place.line.source === own ? '' : `${place.line.source} `;
}

/** The text at a place, in brackets. */
export function textAt({ line, from, to, endLine }: Place): string {
  return `[${line.text.slice(from, endLine ? undefined : to)}]`;
}

function factsOf(finding: Finding): string {
  switch (finding.rule) {
    case 'unknown-name':
      return `no ${finding.wanted} ${finding.name}`;
    case 'duplicate-name':
      return `two ${finding.what} ${finding.name}`;
    case 'unused-fabric':
    case 'unused-block':
      return finding.name;
    case 'wrong-argument':
      return finding.problem;
    case 'import-missing':
      return `${finding.path} ${finding.why}`;
    case 'import-cycle':
      return finding.chain.join(' → ');
    case 'too-large':
      return `${finding.found} past ${finding.limit}`;
    case 'not-yet':
      return finding.what;
    default:
      return '';
  }
}

/** A cell in the language again, with names as resolved: `a/Nine(rust)@90`. */
export function cellText(cell: CellSpec): string {
  switch (cell.kind) {
    case 'fabric':
      return [cell.fabric.name, ...(cell.turns ?? [])].join('@');
    case 'block':
      return [cell.block.name, ...cell.turns].join('@');
    case 'split':
      return `(${cell.parts.map((part) => cellText(part.cell)).join(cell.seam)})`;
    case 'turned':
      return [`(${cellText(cell.inner)})`, ...cell.turns].join('@');
    case 'goes_on':
      return cell.direction === 'left' ? '<' : '^';
    case 'bad':
      return '?';
  }
}

/** The rows of a grid block. */
export function rowsText(instance: BlockInstance): readonly string[] {
  return instance.body.kind === 'grid' ? instance.body.content.map(({ cells }) => cells.map(cellText).join(' ')) : [];
}

/** The blocks that stand directly in a quilt. */
export function blocksIn(spec: QuiltSpec): readonly BlockInstance[] {
  const uses: unknown[] = [spec.tile, spec.between, spec.edges, spec.cornerFilling, spec.sashing, spec.borders, spec.setting];
  const found = new Set<BlockInstance>();
  for (const value of uses) {
    if (typeof value !== 'object' || value === null || value instanceof Map) continue;
    if ('definition' in value) found.add(value as BlockInstance);
    else if (!('eol' in value) && !('node' in value) && !('lane' in value)) uses.push(...(Object.values(value) as unknown[]));
  }
  return [...found];
}
