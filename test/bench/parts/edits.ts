/** The keystrokes that the benches time: what people edit, in the middle of a text, there and back. */
import { replaceRange, type Document } from '../../../server/src/text/document.ts';

export interface Edit {
  readonly line: number;
  readonly character: number;
  readonly was: string;
  readonly is: string;
}

/** By their names; made one after another, the text is as it was. For a text of `patternOf`. */
export function kindsOf(text: string): readonly (readonly [string, readonly [Edit, Edit]])[] {
  const lines = text.split('\n');
  const head = lines.findIndex((line, index) => index > lines.length / 2 && line.startsWith('block'));
  const swap = (line: number, was: string, is: string): readonly [Edit, Edit] => {
    const written = lines[line] ?? '';
    const character = was === '' ? written.length : written.indexOf(was);
    return [{ line, character, was, is }, { line, character, was: is, is: was }];
  };
  return [
    ['a digit of a number', swap(3, '2 1', '3 1')],
    ['a cell', swap(head + 2, /ink|sand|rust/.exec(lines[head + 2] ?? '')?.[0] ?? '', 'sandy')],
    ['a label', swap(0, 'ferry', 'ferries')],
    ['a comment', swap(head + 3, '', ' // the light')],
    ['whitespace', swap(head + 3, '', ' ')],
  ];
}

export function applied(document: Document, { line, character, was, is }: Edit): Document {
  return replaceRange(document, { line, character }, { line, character: character + was.length }, is);
}
