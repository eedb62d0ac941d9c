/** A problem of one line, in columns of that line: what reading a line by itself can say. */
import type { Line } from '../text/document.ts';
import { placeIn } from '../text/place.ts';
import type { Columns } from '../text/place.ts';
import type { Problem, RuleId } from '../text/problem.ts';

export interface Fault extends Columns {
  readonly rule: RuleId;
  readonly message: string;
  readonly fix?: LineFix;
}

export interface LineFix {
  readonly title: string;
  readonly edits: readonly LineEdit[];
}

export interface LineEdit extends Columns {
  readonly text: string;
}

/** A syntax fault at these columns. */
export function fault({ from, to }: Columns, message: string, fix?: LineFix): Fault {
  return { rule: 'syntax', from, to, message, fix };
}

/** The same fault `by` columns further right. */
export function moved(each: Fault, by: number): Fault {
  if (by === 0) return each;
  const edits = each.fix?.edits.map((edit) => ({ ...edit, from: edit.from + by, to: edit.to + by }));
  const fix = each.fix && edits ? { ...each.fix, edits } : undefined;
  return { ...each, from: each.from + by, to: each.to + by, fix };
}

/** The fault as a problem of the document. */
export function problemOf(line: Line, { rule, from, to, message, fix }: Fault): Problem {
  const place = placeIn(line, { from, to });
  if (!fix) return { rule, place, message };
  return { rule, place, message, fix: { title: fix.title, edits: fix.edits.map((edit) => ({ place: placeIn(line, edit), text: edit.text })) } };
}
