/**
 * The handbook's pages as the tests read them: fenced patterns, the pictures that follow a pattern, and parts of its
 * outputs quoted between two comments (`<!-- crib/cutting.md: Sizes -->` … `<!-- end -->`).
 */
import { svgOf } from '../../server/src/drawing/svg.ts';
import { sceneOfBlock } from '../../server/src/drawing/build.ts';
import { outputsOf } from '../../server/src/disk/outputs.ts';
import type { Snapshot } from '../../server/src/snapshot.ts';
import { snapshotOfText } from '../harness/snapshot.ts';

/** A fenced pattern: ```` ```quilt ````, with `wrong RULE` where it shows a mistake, with `part` where declarations are left out. */
export interface Example {
  readonly text: string;
  /** The words after `quilt`. */
  readonly says: string;
  /** Where the fence closes, in the page's lines. */
  readonly end: number;
}

export function examplesOf(page: string): readonly Example[] {
  const lines = page.split('\n');
  const opens = lines.flatMap((line, index) => (line.startsWith('```quilt') ? [index] : []));
  return opens.map((open) => {
    const end = lines.indexOf('```', open);
    return { text: `${lines.slice(open + 1, end).join('\n')}\n`, says: (lines[open] ?? '').slice('```quilt'.length).trim(), end };
  });
}

/** The pictures of a page, each made from the pattern above it: its quilt, or its last block where it has none. */
export function picturesOf(page: string): ReadonlyMap<string, string> {
  const lines = page.split('\n');
  const shown = lines.flatMap((line, index) => {
    const path = /^!\[.+\]\((.+\.svg)\)$/.exec(line)?.[1];
    return path === undefined ? [] : [[path, pictureOf(snapshotAbove(page, index))] as const];
  });
  return new Map(shown);
}

/** The page with every quoted part of an output as the pattern above it gives it. */
export function requoted(page: string): string {
  return page.replace(/<!-- (\S+\.md): (.+) -->\n[^]*?<!-- end -->/g, (_quote, path: string, title: string, offset: number) => {
    const line = page.slice(0, offset).split('\n').length - 1;
    const file = filesOf(snapshotAbove(page, line)).get(path);
    if (file === undefined) throw new Error(`no ${path} is built by the pattern above it`);
    return `<!-- ${path}: ${title} -->\n\n${quoted(sectionOf(file, title))}\n\n<!-- end -->`;
  });
}

function snapshotAbove(page: string, line: number): Snapshot {
  const above = examplesOf(page).filter(({ end, says }) => end < line && says === '').at(-1);
  if (!above) throw new Error(`no pattern stands above line ${String(line + 1)}`);
  return snapshotOfText(above.text);
}

function pictureOf(snapshot: Snapshot): string {
  const [quilt] = snapshot.quilts;
  const block = snapshot.blocks.at(-1);
  if (quilt) return svgOf(quilt.scene);
  if (block) return svgOf(sceneOfBlock(block.layout));
  throw new Error('a pattern without a block has no picture');
}

function filesOf(snapshot: Snapshot): ReadonlyMap<string, string> {
  return new Map(outputsOf(snapshot, { only: ['cutting.md', 'steps.md'] }).map(({ path, content }) => [path, content.toString()]));
}

/** A heading and what stands under it, up to the next heading that is as high. */
function sectionOf(file: string, title: string): readonly string[] {
  const lines = file.trimEnd().split('\n');
  const start = lines.findIndex((line) => /^#+ /.test(line) && line.replace(/^#+ /, '') === title);
  if (start < 0) throw new Error(`no heading says ${title}`);
  const depth = depthOf(lines[start]);
  const next = lines.findIndex((line, index) => index > start && depthOf(line) > 0 && depthOf(line) <= depth);
  return lines.slice(start, next < 0 ? undefined : next);
}

function depthOf(line = ''): number {
  return /^(#+) /.exec(line)?.[1]?.length ?? 0;
}

/** The heading in bold, so that the page's own contents stay its own. */
function quoted(section: readonly string[]): string {
  const lines = section.join('\n').trimEnd().split('\n').map((line) => line.replace(/^#+ (.*)$/, '**$1**'));
  return lines.map((line) => (line === '' ? '>' : `> ${line}`)).join('\n');
}
