/** The library files that come with the tool, to be imported by name. Each is parsed when it is first asked for. */
import traditional from '../../library/traditional.quilt';
import type { Shelf } from '../model/imports.ts';
import { parse } from '../syntax/parse.ts';
import type { Tree } from '../syntax/tree.ts';
import { documentOf } from '../text/document.ts';

const TEXTS: ReadonlyMap<string, string> = new Map([['traditional', traditional]]);

const trees = new Map<string, Tree>();

export const SHELF: Shelf = {
  names: [...TEXTS.keys()],
  file: (name) => {
    const text = TEXTS.get(name);
    if (text === undefined) return undefined;
    const tree = trees.get(name) ?? parse(documentOf(`library:${name}.quilt`, text));
    trees.set(name, tree);
    return tree;
  },
};
