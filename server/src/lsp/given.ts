/**
 * Files that the editor reads for the server, because they have no place on its disk: those of a virtual folder, and all of them in
 * a browser. They come by `scant/files`; what the machine can read itself, it reads itself.
 */
import type { Notifications } from './requests.ts';
import type { Services } from './services.ts';

export interface GivenFiles extends Services {
  /** Takes files that are new or changed, or gone (without a text). */
  readonly take: (files: Notifications['scant/files']['files']) => void;
}

interface Given {
  readonly uri: string;
  readonly text: string;
  readonly stamp: string;
}

/** `isOfMachine`: whether an address is one that the machine can read. */
export function givenFiles(machine: Services, isOfMachine: (uri: string) => boolean): GivenFiles {
  const given = new Map<string, Given>();
  let taken = 0;
  return {
    ...machine,
    keyOf: (uri) => (isOfMachine(uri) ? machine.keyOf(uri) : plain(uri)),
    read: (uri) => given.get(plain(uri)) ?? machine.read(uri),
    stamp: (uri) => given.get(plain(uri))?.stamp ?? machine.stamp(uri),
    list: (folders) => [...machine.list(folders), ...[...given.values()].map(({ uri }) => uri).filter((uri) => folders.some((folder) => isWithin(uri, folder)))],
    resolve: (importer, path, folders) => {
      if (isOfMachine(importer)) return machine.resolve(importer, path, folders);
      const uri = joined(importer, path);
      const folder = folders.find((each) => isWithin(importer, each)) ?? joined(importer, '.');
      if (uri === undefined || folder === undefined) return 'missing';
      if (!isWithin(uri, folder)) return 'outside';
      return { uri, state: given.has(plain(uri)) ? 'there' : 'missing' };
    },
    take: (files) => {
      taken += 1;
      for (const { uri, text } of files) {
        if (text === null) given.delete(plain(uri));
        else given.set(plain(uri), { uri, text, stamp: `given ${taken}` });
      }
    },
  };
}

/** The address that a path means beside a file; undefined where addresses have no folders (an unsaved text). */
function joined(uri: string, path: string): string | undefined {
  try {
    return new URL(path.split('/').map(encodeURIComponent).join('/'), uri).href;
  } catch {
    return undefined;
  }
}

function isWithin(uri: string, folder: string): boolean {
  return plain(uri).startsWith(`${plain(folder).replace(/\/$/, '')}/`);
}

/** Editors do not agree on what they encode. */
function plain(uri: string): string {
  try {
    return decodeURIComponent(uri);
  } catch {
    return uri;
  }
}
