/** The patterns that a newcomer opens first, with the files they import. */
import { readdirSync, readFileSync } from 'node:fs';
import type { Snapshot } from '../../../server/src/snapshot.ts';
import { snapshotOfText } from '../../harness/snapshot.ts';

const FOLDER = new URL('../../../samples/', import.meta.url);
const read = (path: string): string => readFileSync(new URL(path, FOLDER), 'utf8');

const FILES = Object.fromEntries(readdirSync(new URL('blocks/', FOLDER)).map((name) => [`blocks/${name}`, read(`blocks/${name}`)]));

export const SAMPLES: readonly string[] = readdirSync(FOLDER).filter((name) => name.endsWith('.quilt'));

export function sampleText(name: string): string {
  return read(name);
}

/** A text that may import what the samples import. */
export function snapshotBeside(text: string): Snapshot {
  return snapshotOfText(text, FILES);
}
