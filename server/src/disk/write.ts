/**
 * Writing outputs: every file whole or not at all, only where bytes differ, never through a link, never over what a
 * person has edited. Everything is looked at before anything is changed, so what is refused leaves the folder as it was.
 */
import { rmSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { alone } from './lock.ts';
import { contentOf, kindOf } from './look.ts';
import { MANIFEST_FILE, manifestText, readManifest, sumOf, type Manifest } from './manifest.ts';
import { isAtHome, removeEmpty, removeLeftovers, replaceAll, type Books, type OutputFile, type OutputPlace } from './replace.ts';
import { isInside, real } from './sources.ts';

export interface WriteOptions {
  /** `overwrite` takes files that a person has edited; links and folders in the way stay. Unless given: `keep`. */
  readonly edited?: 'keep' | 'overwrite';
  /** `remove` takes away what an earlier build wrote, nobody edited and this one no longer makes. Unless given: `keep`. */
  readonly stale?: 'keep' | 'remove';
  /** The folder must lie in this one, links followed. */
  readonly within?: string;
}

/** Paths as in `OutputFile`, in order. */
export interface Written {
  readonly kind: 'written';
  readonly written: readonly string[];
  readonly unchanged: readonly string[];
  readonly removed: readonly string[];
}

/** Nothing was written; one sentence for each reason, paths joined to the folder's. */
export interface Refused {
  readonly kind: 'refused';
  readonly reasons: readonly string[];
}

/** Makes the folder hold these files, one build after another. Never throws. */
export function writeOutputs(folder: string, files: readonly OutputFile[], options: WriteOptions = {}): Written | Refused {
  const result = alone(folder, () => writeAlone(folder, files, options));
  if (result.kind !== 'busy') return result;
  return { kind: 'refused', reasons: [`another build (process ${result.process}) is writing to ${folder}; try again when it has ended`] };
}

function writeAlone(folder: string, files: readonly OutputFile[], options: WriteOptions): Written | Refused {
  const home = homeOf(folder);
  const astray = options.within === undefined ? undefined : leavesFolder(home, options.within);
  if (astray !== undefined) return { kind: 'refused', reasons: [astray] };
  const manifest = readManifest(folder);
  const states = files.map((file) => stateOf(folder, file, manifest));
  const reasons = [...states, bookState(folder)].map((state) => refusal(folder, state, options)).filter((reason) => reason !== undefined);
  if (reasons.length > 0) return { kind: 'refused', reasons };
  const changed = files.filter((_, index) => states[index]?.now !== 'same');
  const stale = options.stale === 'remove' ? staleIn(folder, files, manifest) : [];
  const place = { folder, home: home.path };
  removeLeftovers(place, files);
  const failure = files.length === 0 ? undefined : replaceAll(place, changed, booksOf(folder, files, { manifest, stale }));
  if (failure !== undefined) return { kind: 'refused', reasons: [failure] };
  removeAll(place, stale);
  const written = changed.map((file) => file.path);
  return { kind: 'written', written, unchanged: files.map((file) => file.path).filter((path) => !written.includes(path)), removed: stale };
}

/** What a build would change: files that are missing or differ, and those that it would take away. Line ends do not count. */
export interface Differences {
  readonly kind: 'compared';
  readonly differing: readonly string[];
  readonly leftOver: readonly string[];
}

/** Compares a folder with what a build would write, and writes nothing. */
export function compareOutputs(folder: string, files: readonly OutputFile[], { stale }: Pick<WriteOptions, 'stale'> = {}): Differences {
  const manifest = readManifest(folder);
  const differing = files.filter((file) => {
    const content = kindOf(join(folder, file.path)) === 'file' ? contentOf(join(folder, file.path)) : undefined;
    return content === undefined || sumOf(content) !== sumOf(file.content);
  });
  return { kind: 'compared', differing: differing.map(({ path }) => path), leftOver: stale === 'remove' ? staleIn(folder, files, manifest) : [] };
}

/** Undefined when the manifest is right already. */
function booksOf(folder: string, files: readonly OutputFile[], { manifest, stale }: { readonly manifest: Manifest; readonly stale: readonly string[] }): Books | undefined {
  const during = new Map(manifest);
  const after = new Map([...manifest].filter(([path]) => !stale.includes(path)));
  for (const { path, content } of files) {
    const sum = sumOf(content);
    during.set(path, [...new Set([...(manifest.get(path) ?? []), sum])]);
    after.set(path, [sum]);
  }
  const text = manifestText(after);
  return contentOf(join(folder, MANIFEST_FILE))?.toString() === text ? undefined : { during: manifestText(during), after: text };
}

interface FileState {
  /** `edited`: other bytes than this build's, and not those the manifest knows. */
  readonly now: 'absent' | 'same' | 'ours' | 'edited' | 'folder' | 'link' | 'other' | 'unreadable';
  /** The part of the path that is in the way. */
  readonly at: string;
}

function stateOf(folder: string, file: OutputFile, manifest: Manifest): FileState {
  const parts = file.path.split('/');
  for (let length = 1; length < parts.length; length++) {
    const at = parts.slice(0, length).join('/');
    const kind = kindOf(join(folder, at));
    if (kind === 'absent') return { now: 'absent', at };
    if (kind !== 'folder') return { now: kind === 'file' ? 'other' : kind, at };
  }
  const at = file.path;
  const kind = kindOf(join(folder, at));
  if (kind !== 'file') return { now: kind, at };
  const content = contentOf(join(folder, at));
  if (!content) return { now: 'unreadable', at };
  if (content.equals(bytesOf(file.content))) return { now: 'same', at };
  const sum = sumOf(content);
  return { now: sum === sumOf(file.content) || knownSums(manifest, at).includes(sum) ? 'ours' : 'edited', at };
}

function bytesOf(content: string | Uint8Array): Uint8Array {
  return typeof content === 'string' ? Buffer.from(content) : content;
}

/** Under any case: on some disks `Star.svg` is what stands in the way of `star.svg`. */
function knownSums(manifest: Manifest, path: string): string[] {
  return [...manifest].filter(([known]) => known.toLowerCase() === path.toLowerCase()).flatMap(([, sums]) => sums);
}

/** The manifest is the tool's own, whatever it holds, but it must be a file. */
function bookState(folder: string): FileState {
  const kind = kindOf(join(folder, MANIFEST_FILE));
  return { now: kind === 'file' ? 'ours' : kind, at: MANIFEST_FILE };
}

function refusal(folder: string, { now, at }: FileState, options: WriteOptions): string | undefined {
  const path = join(folder, at);
  if (now === 'folder') return `${path} is a folder; a file of that name would be written there`;
  if (now === 'link') return `${path} is a link, and links are not followed; move it away`;
  if (now === 'other') return `${path} is in the way; move it away`;
  if (now === 'unreadable') return `${path} cannot be read`;
  if (now === 'edited' && options.edited !== 'overwrite') return `${path} has been edited by hand; move it away (scant build --force overwrites it)`;
  return undefined;
}

interface Home {
  /** Where a folder is or will be, every link followed. */
  readonly path: string;
  /** The innermost part of it that is there. */
  readonly nearest: string;
}

function homeOf(folder: string): Home {
  const missing: string[] = [];
  let nearest = folder;
  for (; kindOf(nearest) === 'absent' && nearest !== dirname(nearest); nearest = dirname(nearest)) missing.unshift(basename(nearest));
  return { path: join(real(nearest), ...missing), nearest };
}

/** A sentence when it does not lie in the other folder. */
function leavesFolder({ path, nearest }: Home, within: string): string | undefined {
  if (isInside(real(within), path)) return undefined;
  return `${nearest} is a link that leads out of ${within} (scant build --out writes there)`;
}

/** What the manifest knows, this build does not make, and nobody has edited or replaced. */
function staleIn(folder: string, files: readonly OutputFile[], manifest: Manifest): string[] {
  const made = new Set(files.map((file) => file.path.toLowerCase()));
  return [...manifest]
    .filter(([path, sums]) => !made.has(path.toLowerCase()) && stateOf(folder, { path, content: '' }, new Map([[path, sums]])).now === 'ours')
    .map(([path]) => path);
}

function removeAll(place: OutputPlace, paths: readonly string[]): void {
  for (const path of paths) {
    const at = join(place.folder, path);
    if (!isAtHome(place, dirname(at))) continue;
    rmSync(at, { force: true });
    if (path.includes('/')) removeEmpty(dirname(at));
  }
}
