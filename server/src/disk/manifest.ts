/**
 * What the tool wrote into an output folder, so that it knows its own files: `.scant`, a JSON file of SHA-256 sums by path.
 * A file whose sum differs has been edited by hand. Line ends do not count, since version control may change them.
 * While files are put in place it holds the old and the new sum of each, so that a build that was cut short is known, too.
 */
import { createHash } from 'node:crypto';
import { lstatSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** Sums by path in the folder, with `/`; several while it is not sure which is there. */
export type Manifest = ReadonlyMap<string, readonly string[]>;

export const MANIFEST_FILE = '.scant';

/** Empty when there is none, or none that can be read. */
export function readManifest(folder: string): Manifest {
  const path = join(folder, MANIFEST_FILE);
  try {
    if (!lstatSync(path).isFile()) return new Map();
    const parsed: unknown = JSON.parse(readFileSync(path, 'utf8'));
    if (!isRecord(parsed) || !isRecord(parsed['files'])) return new Map();
    return new Map(Object.entries(parsed['files']).filter(([each]) => isOwnPath(each)).map(([each, sums]) => [each, [sums].flat().filter((sum) => typeof sum === 'string')]));
  } catch {
    return new Map();
  }
}

export function manifestText(manifest: Manifest): string {
  const files = Object.fromEntries([...manifest].sort(([a], [b]) => (a < b ? -1 : 1)).map(([path, sums]) => [path, sums.length === 1 ? sums[0] : sums]));
  return `${JSON.stringify({ note: 'Written by scant. Files that differ from these sums have been edited by hand.', files }, null, 2)}\n`;
}

export function sumOf(content: string | Uint8Array): string {
  const bytes = typeof content === 'string' ? Buffer.from(content) : Buffer.from(content.buffer, content.byteOffset, content.byteLength);
  return createHash('sha256').update(bytes.toString('latin1').replaceAll('\r\n', '\n'), 'latin1').digest('hex');
}

/** A path that stays in the folder: a manifest may come from anyone. */
function isOwnPath(path: string): boolean {
  return path.split('/').every((part) => /^[\p{L}\p{M}\p{N}_-][\p{L}\p{M}\p{N}_.-]*$/u.test(part));
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null;
}
