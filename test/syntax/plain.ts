/** Trees as plain data, lines as their numbers: for comparing two of them. */
import type { Statement, Tree } from '../../server/src/syntax/tree.ts';
import type { Document, Line } from '../../server/src/text/document.ts';

/** Statements and problems of a tree as JSON. */
export function plain({ document, statements, problems, allowed }: Tree): string {
  return json(document, { statements, problems, allowed: [...allowed] });
}

/** What a tree says, places aside: for texts that should mean the same. */
export function meaning({ document, statements }: Tree): string {
  return JSON.stringify(statements.map(bare), (name, value: unknown) => {
    if (name === 'from' || name === 'to' || name === 'place' || name === 'word' || name === 'columns') {
      return typeof value === 'string' ? value : undefined;
    }
    return typeof value === 'bigint' ? `${value}` : value;
  }) + document.source;
}

function bare({ node, body }: Statement): object {
  return { node, closed: body?.close !== undefined, inner: body?.statements.map(bare) };
}

function json(document: Document, value: unknown): string {
  return JSON.stringify(value, (name, each: unknown) => {
    if (name === 'parent') return undefined;
    if (typeof each === 'bigint') return `${each}`;
    return typeof each === 'object' && each !== null && 'eol' in each ? document.numberOf(each as Line) : each;
  });
}
