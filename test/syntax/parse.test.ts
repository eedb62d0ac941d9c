import { describe, expect, test } from 'vitest';
import { toNumber } from '../../server/src/exact/number.ts';
import { Exact } from '../../server/src/exact/number.ts';
import { walkStatements } from '../../server/src/syntax/find.ts';
import { parse } from '../../server/src/syntax/parse.ts';
import type { Statement } from '../../server/src/syntax/tree.ts';
import { Document, documentOf, replaceRange } from '../../server/src/text/document.ts';
import { FIRST_PATTERN } from '../harness/first-pattern.ts';


/** A node in short: `kind(field, field)`; names and words as they are, numbers as decimals, columns left out. */
function short(value: unknown): string {
  if (value instanceof Exact) return String(toNumber(value));
  if (Array.isArray(value)) return `[${value.map(short).join(' ')}]`;
  if (typeof value !== 'object' || value === null) return String(value);
  const { kind, word, columns, ...rest } = value as Record<string, unknown>;
  const fields = Object.fromEntries(Object.entries(rest).filter(([name]) => !['from', 'to', 'seams'].includes(name)));
  if (kind === 'name') return String(fields['text']);
  if (kind === 'word') return `'${String(word)}'`;
  if (kind === 'number') return short(fields['value']);
  const parts = [...(Array.isArray(columns) ? [['columns', columns] as const] : []), ...Object.entries(fields)].filter(([, field]) => field !== undefined && field !== false && !(Array.isArray(field) && field.length === 0));
  return `${typeof kind === 'string' ? kind : ''}(${parts.map(([name, field]) => `${name}: ${short(field)}`).join(', ')})`;
}

function tree(text: string): string[] {
  const { statements, problems } = parse(documentOf('test', text));
  expect(problems.map(({ message }) => message)).toEqual([]);
  const lines = (all: readonly Statement[], indent: string): string[] => all.flatMap(({ node, body }) => [indent + short(node), ...lines(body?.statements ?? [], `${indent}  `)]);
  return lines(statements, '');
}

function inner(braces: string, text: string): string[] {
  return tree(`${braces} {\n${text}\n}`).slice(1).map((line) => line.slice(2));
}

describe('statements of the top level', () => {
  test.each([
    ['pattern "A \\"B\\" \\\\"', 'pattern(title: text(value: A "B" \\))'],
    ['import "lib/stars.quilt" as stars', 'import(path: text(value: lib/stars.quilt), as: stars)'],
    ['let a = (unit*3 + 1/2")', 'let(name: a, value: parentheses(inner: operation(operator: +, left: operation(operator: *, left: reference(name: unit), right: 3), right: measure(amount: 0.5, unit: in))))'],
    ['let a = 2 1/2"', 'let(name: a, value: measure(amount: 2.5, unit: in))'],
    ['let a = a/3/4', 'let(name: a, value: operation(operator: /, left: operation(operator: /, left: reference(name: a), right: 3), right: 4))'],
    ['let a = 3 - 1 - 1', 'let(name: a, value: operation(operator: -, left: operation(operator: -, left: 3, right: 1), right: 1))'],
    ['let a = -sqrt(2)/2', 'let(name: a, value: operation(operator: /, left: minus(operand: root(of: 2)), right: 2))'],
    ['let a = (2½ + ½)cm', 'let(name: a, value: measure(amount: parentheses(inner: operation(operator: +, left: 2.5, right: 0.5)), unit: cm))'],
    ['fabric ink #22345C "Night" value dark directional', `fabric(name: ink, colour: colour(value: #22345c), label: text(value: Night), value: 'dark', directional: 'directional')`],
    ['fabric a #000000 from fat_quarters width 18" by 22" shrink 2.5%', `fabric(name: a, colour: colour(value: #000000), source: (source: 'fat_quarters', size: pair(first: length(value: measure(amount: 18, unit: in)), second: length(value: measure(amount: 22, unit: in)))), shrink: 2.5)`],
    ['fabric a #000000 from strips 2 1/2"', `fabric(name: a, colour: colour(value: #000000), source: (source: 'strips', length: length(value: measure(amount: 2.5, unit: in))))`],
    ['assorted s = a b c by patch', `assorted(name: s, prints: [a b c], by: 'patch')`],
    ['assorted s 12 #aabbcc "Reds"', 'assorted(name: s, count: 12, colour: colour(value: #aabbcc), label: text(value: Reds))'],
    ['block A(a, b = ink, d = 1/3) cut 6" {}', 'block(parameters: [(name: a) (name: b, default: reference(name: ink)) (name: d, default: 0.3333333333333333)], name: A, size: length(cut: true, value: measure(amount: 6, unit: in)))'],
    ['block A {}', 'block(name: A)'],
    ['block A 4" by (n) {}', 'block(name: A, size: pair(first: length(value: measure(amount: 4, unit: in)), second: length(value: parentheses(inner: reference(name: n)))))'],
    ['size bed 6 by 7 for queen_bed', 'size(name: bed, count: pair(first: 6, second: 7), bed: queen_bed)'],
    ['expect cut A.sand 2" by 2"', 'expect(value: measure(amount: 2, unit: in), by: measure(amount: 2, unit: in), cut: true, path: [A sand], comparison: exactly)'],
    ['expect throw.binding at least 3 yd', 'expect(value: measure(amount: 3, unit: yd), path: [throw binding], comparison: at_least)'],
    ['steps before A { }', `steps(where: 'before', of: A)`],
  ])('%s', (text, expected) => expect(tree(text)).toEqual([expected]));
});

describe('in pattern and block', () => {
  test.each([
    ['pattern "A"', 'units centimeters', `units(units: 'centimetres')`],
    ['pattern "A"', 'spare 7 %', 'spare(percent: 7)'],
    ['pattern "A"', 'method half_squares eight_at_a_time trim 1/8"', `method(unit: 'half_squares', way: 'eight_at_a_time', trim: 'trim', trimBy: length(value: measure(amount: 0.125, unit: in)))`],
    ['block A', 'grid 2 1-1/2 rest by (n)', `grid(columns: [2 1.5 'rest'], rows: [parentheses(inner: reference(name: n))])`],
    ['block A', 'centre Star(rust) 2" by 1"', 'centre(filling: reference(name: Star, arguments: [(value: reference(name: rust))]), size: pair(first: length(value: measure(amount: 2, unit: in)), second: length(value: measure(amount: 1, unit: in))))'],
    ['block A', 'round 1" light dark', 'round(length: length(value: measure(amount: 1, unit: in)), fabrics: [light dark])'],
    ['block A', 'corner ink 2" top_left bottom_right', `corner(fabric: ink, length: length(value: measure(amount: 2, unit: in)), corners: ['top_left' 'bottom_right'])`],
    ['block A', 'patch fan 0,0 1-1/2,0 arc -2½ (n),-1 arc 3 grain 45', 'patch(fabric: fan, corners: [corner_point(x: 0, y: 0) corner_point(x: 1.5, y: 0) corner_point(x: parentheses(inner: reference(name: n)), y: minus(operand: 1))], arcs: [arc(after: 1, radius: minus(operand: 2.5)) arc(after: 2, radius: 3)], grain: 45)'],
    ['block A', 'place B at 1/2,0 size 2 by 1', 'place_at(block: reference(name: B), at: corner_point(x: 0.5, y: 0), size: pair(first: 2, second: 1))'],
    ['block A', 'mirrored { a }', 'mirrored()'],
  ])('%s: %s', (braces, text, expected) => expect(inner(braces, text)[0]).toBe(expected));
});

describe('in quilt', () => {
  test.each([
    ['on_point 4 by (n + 1)', 'on_point(count: pair(first: 4, second: parentheses(inner: operation(operator: +, left: reference(name: n), right: 1))))'],
    ['place turned 4 { a }', `place(symmetry: 'turned', times: 4)`],
    ['row 2" sand', 'row(height: length(value: measure(amount: 2, unit: in)), fabric: sand)'],
    ['row A B(rust) sand', 'row(cells: [reference(name: A) reference(name: B, arguments: [(value: reference(name: rust))]) reference(name: sand)])'],
    ['edges A corners none float 1/2"', `edges(filling: reference(name: A), corners: 'none', float: length(value: measure(amount: 0.5, unit: in)))`],
    ['corners sand', 'corners(filling: reference(name: sand))'],
    ['sashing cut 1 1/2" sand cornerstones rust outer', `sashing(width: length(cut: true, value: measure(amount: 1.5, unit: in)), filling: reference(name: sand), cornerstones: reference(name: rust), outer: 'outer')`],
    ['border 2" ink corners squares rust lengthwise', `border(width: length(value: measure(amount: 2, unit: in)), fabric: ink, corners: 'squares', cornerFabric: reference(name: rust), lengthwise: 'lengthwise', form: plain)`],
    ['border top 2" sides 3" ink corners mitered', `border(top: length(value: measure(amount: 2, unit: in)), sides: length(value: measure(amount: 3, unit: in)), fabric: ink, corners: 'mitred', form: unequal)`],
    ['border to 60" by 72" ink', 'border(size: pair(first: length(value: measure(amount: 60, unit: in)), second: length(value: measure(amount: 72, unit: in))), fabric: ink, form: to)'],
    ['border pieced Goose(a)@90 corner Star meet', `border(unit: reference(name: Goose, arguments: [(value: reference(name: a))], turns: [turn(by: 90)]), cornerBlock: reference(name: Star), meet: 'meet', form: pieced)`],
    ['border pieced { A B } corner C', 'border(cornerBlock: reference(name: C), form: pieced)'],
    ['binding 2 1/4" rust single bias', `binding(width: length(value: measure(amount: 2.25, unit: in)), fabric: rust, layers: 'single', grain: 'bias')`],
    ['quilting "Spirals" in_the_ditch echo 1/4"', `quilting(parts: [text(value: Spirals) 'in_the_ditch' echo(length: length(value: measure(amount: 0.25, unit: in)))])`],
  ])('%s', (text, expected) => expect(inner('quilt', text)[0]).toBe(expected));
});

describe('cells', () => {
  test.each([
    ['a/b', 'split(seam: /, parts: [(cell: reference(name: a)) (cell: reference(name: b))])'],
    ['a*2|b*(n)|c', 'split(seam: |, parts: [(cell: reference(name: a), weight: 2) (cell: reference(name: b), weight: parentheses(inner: reference(name: n))) (cell: reference(name: c))])'],
    ['a*2-1/2-b', 'split(seam: -, parts: [(cell: reference(name: a), weight: 2.5) (cell: reference(name: b))])'],
    ['a/b@90', 'split(seam: /, parts: [(cell: reference(name: a)) (cell: reference(name: b, turns: [turn(by: 90)]))])'],
    ['( left \\ top )/(bottom\\right)@flip@180', 'split(seam: /, parts: [(cell: group(inner: split(seam: \\, parts: [(cell: reference(name: left)) (cell: reference(name: top))]))) (cell: group(inner: split(seam: \\, parts: [(cell: reference(name: bottom)) (cell: reference(name: right))]), turns: [turn(by: flip) turn(by: 180)]))])'],
    ['lib.Star(d = 1/3, n: unit*2, 1-1/2, A(b)@90)', 'reference(name: lib.Star, arguments: [(name: d, value: 0.3333333333333333) (name: n, value: operation(operator: *, left: reference(name: unit), right: 2)) (value: 1.5) (value: reference(name: A, arguments: [(value: reference(name: b))], turns: [turn(by: 90)]))])'],
    ['<', 'goes_on(direction: left)'],
    ['^', 'goes_on(direction: above)'],
    ['A()', 'reference(name: A)'],
  ])('%s', (cell, expected) => expect(inner('block A', `  a ${cell}`)).toEqual([`row_of_cells(cells: [reference(name: a) ${expected}])`]));
});

describe('texts that span lines', () => {
  const text = 'pattern "A" {\n  about """\n    Two *blocks*.\n\n      More \\"here\\".\n    """\n  by "B" }\n';

  test('say their lines without what these share in front', () => {
    const document = documentOf('test', text);
    const [pattern] = parse(document).statements;
    const about = pattern?.body?.statements[0];
    expect(about?.node).toMatchObject({ kind: 'about', text: { value: 'Two *blocks*.\n\n  More "here".', place: { from: 8, to: 7 } } });
    expect(about?.place.endLine).toBe(document.lines[5]);
    expect(pattern?.body?.statements[1]?.node).toMatchObject({ kind: 'by' });
    expect(pattern?.body?.close?.line).toBe(document.lines[6]);
  });

  test('braces may close behind them', () => {
    const [steps] = parse(documentOf('test', 'steps {\n  """Sew\n  {A.count}""" }\nsize a 2 by 3')).statements;
    expect(steps?.body?.statements[0]?.node).toMatchObject({ kind: 'wording', text: { value: 'Sew\n{A.count}' } });
    expect(steps?.body?.close).toMatchObject({ from: 15, to: 16 });
  });
});

describe('sharing', () => {
  const document = documentOf('test', FIRST_PATTERN);
  const before = parse(document);

  test('a statement without a changed line is the same object, wherever it moves', () => {
    const after = parse(replaceRange(document, { line: 0, character: 0 }, { line: 0, character: 0 }, '// one\n// two\n'), before);
    expect(after.statements.slice(1)).toEqual(before.statements.slice(1));
    after.statements.slice(1).forEach((statement, index) => expect(statement).toBe(before.statements[index + 1]));
  });

  test('an edit inside a block makes that block anew, and only the edited node', () => {
    const after = parse(replaceRange(document, { line: 13, character: 2 }, { line: 13, character: 6 }, 'rust'), before);
    const old = new Set([...walkStatements(before)].map(({ node }) => node));
    expect([...walkStatements(after)].filter(({ node }) => !old.has(node)).map(({ line }) => line.text)).toEqual(['  rust/ink   sand-ink   ink\\sand']);
    expect(after.statements.filter((statement) => !before.statements.includes(statement)).map(({ node }) => node.kind)).toEqual(['block']);
  });

  test('equal lines have one node', () => {
    const [first, second] = parse(documentOf('test', 'block A {\n  a b\n  a b\n}')).statements[0]?.body?.statements ?? [];
    expect(first?.node).toBe(second?.node);
    expect(first).not.toBe(second);
  });

  test('a tree of another document helps as well', () => {
    expect(parse(new Document('other', document.lines), before).statements).toEqual(before.statements);
  });
});

test('silenced rules are kept by line', () => {
  const document = documentOf('test', 'fabric a #aabbcc // allow unused-fabric, low-contrast nonsense\n// allow gap\n// allowed\n');
  expect([...parse(document).allowed].map(([line, rules]) => [document.numberOf(line), rules])).toEqual([[0, ['unused-fabric', 'low-contrast']], [1, ['gap']]]);
});

test('CR, CRLF and LF end lines alike', () => {
  expect(tree('let a = 1\r\nlet b = 2\rlet c = 3\n')).toHaveLength(3);
});
