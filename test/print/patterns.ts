/** Patterns that booklets are printed of in tests: the samples, and texts that show what no sample shows. */
import { readdirSync, readFileSync } from 'node:fs';
import type { Snapshot } from '../../server/src/snapshot.ts';
import { snapshotOfText } from '../harness/snapshot.ts';

export interface Printed {
  readonly name: string;
  readonly snapshot: Snapshot;
}

/** In centimetres, in German, with other colours, two prints in turn, unequal borders and words of the author. */
export const FERRY = `pattern "Fähre & <Möwe>" {
  by "Anne *Sand*"
  about """Ein Quilt für die *Überfahrt*: {width} breit.

- warm
- leicht

[Hafen](https://example.org/hafen)"""
  units centimetres
  seam 0.75 cm
  level "Anfänger"
  language de
}

fabric welle  #22345c "Welle"
fabric moewe  #eadfc8 "Möwe"
fabric rost   #a4502e "Rost"
fabric gras   #3a7d5d "Gras"
assorted bunt = rost gras by block

block Boje(a = welle, b = moewe) 20 cm {
  a/b  b\\a
  b\\a  bunt
}

block Kiel 20 cm {
  bunt moewe
  moewe welle
}

quilt {
  straight 3 by 4
  place {
    Boje Kiel
    Kiel Boje
  }
  sashing 4 cm moewe cornerstones rost
  border 5 cm welle
  border cut 11.5 cm moewe corners mitred
  backing welle
  batting overhang 10 cm
  binding cut 6 cm rost
}

size klein 2 by 2
size gross 3 by 4 for twin_bed

colorway abend {
  welle #4a2545 "Abend"
  moewe #f6d6c0 "Dunst"
}

steps before Boje { "Erst **vier** Bojen; im Ganzen {Boje.count}." }
`;

/** A quilt of as many different blocks, each named once. */
export function sampler(blocks: number): string {
  const names = Array.from({ length: blocks }, (_, i) => `Flag${i + 1}`);
  const grids = names.map((name, i) => {
    const cell = (row: number, column: number): string => {
      const [a, b] = (i >> ((row * 3 + column) % 5)) & 1 ? ['ink', 'sand'] : ['sand', 'rust'];
      return [`${a}/${b}`, `${a}\\${b}`, a, b][(i + row * 2 + column) % 4] ?? a;
    };
    return `block ${name} 9" {\n${[0, 1, 2].map((row) => `  ${[0, 1, 2].map((column) => cell(row, column)).join(' ')}`).join('\n')}\n}\n`;
  });
  const across = 5;
  const rows = Array.from({ length: Math.ceil(blocks / across) }, (_, row) => `    ${names.slice(row * across, (row + 1) * across).join(' ')}`);
  return [
    'pattern "Thirty Flags" {\n  units inches\n}\n',
    'fabric ink  #22345c "Night ferry print"\nfabric rust #a4502e "Rusted chain"\nfabric sand #eadfc8 "Dry sand solid"\n',
    ...grids,
    `quilt {\n  straight ${across} by ${rows.length}\n  place {\n${rows.join('\n')}\n  }\n  sashing 2" sand cornerstones ink\n  border 4" ink\n  backing sand\n  binding cut 2 1/2" rust\n}\n`,
  ].join('\n');
}

const SAMPLES = new URL('../../samples/', import.meta.url);

function filesOf(folder: string): Readonly<Record<string, string>> {
  const names = readdirSync(new URL(folder, SAMPLES)).filter((name) => name.endsWith('.quilt'));
  return Object.fromEntries(names.map((name) => [`${folder}${name}`, readFileSync(new URL(`${folder}${name}`, SAMPLES), 'utf8')]));
}

export interface PatternText {
  readonly name: string;
  readonly text: string;
  /** What it imports. */
  readonly files: Readonly<Record<string, string>>;
}

/** Every sample, and the texts above. */
export function sampleTexts(): readonly PatternText[] {
  const files = filesOf('blocks/');
  const samples = Object.entries(filesOf('')).map(([name, text]) => ({ name, text, files }));
  return [...samples, { name: 'ferry', text: FERRY, files: {} }, { name: 'four flags', text: sampler(4), files: {} }];
}

export function printed(): readonly Printed[] {
  return sampleTexts().map(({ name, text, files }) => ({ name, snapshot: snapshotOfText(text, files) }));
}
