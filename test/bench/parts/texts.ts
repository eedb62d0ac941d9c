/** Texts of a wanted length for the benches: a pattern, and the same blocks as JSON and as YAML with a schema for both. The same every time. */
import { random } from '../../geometry/partitions.ts';

/** A pattern of about so many lines: blocks of four by four, rows of 200 kinds in three fabrics, each block set once; it has no errors. */
export function patternOf(lines: number): string {
  const blocks = blocksOf(lines);
  const names = blocks.map(({ name }) => name);
  const bodies = blocks.map(({ name, rows }) => `block ${name} 6" {\n${rows.map((row) => `  ${row.join(' ')}\n`).join('')}}\n`);
  const across = 10;
  const setting = Array.from({ length: Math.ceil(names.length / across) }, (_, row) => `    ${names.slice(row * across, (row + 1) * across).join(' ')}\n`);
  return `fabric ink #22345c "Night ferry print"\nfabric sand #eadfc8 "Dry sand solid"\nfabric rust #a4502e "Rusted chain"\nlet unit = 2 1/2"\n${bodies.join('\n')}\nquilt {\n  straight ${across} by ${setting.length}\n  place {\n${setting.join('')}  }\n}\n`;
}

/** The blocks as a list of objects, an object a line or a row a line. */
export function jsonOf(lines: number): string {
  const items = blocksOf(lines).map(({ name, rows }) => `    {\n      "name": "${name}", "size": 6, "rows": [\n${rows.map((row) => `        ${JSON.stringify(row)}`).join(',\n')}\n      ]\n    }`);
  return `{\n  "blocks": [\n${items.join(',\n')}\n  ]\n}\n`;
}

export function yamlOf(lines: number): string {
  const items = blocksOf(lines).map(({ name, rows }) => `  - name: ${name}\n    size: 6\n    rows:\n${rows.map((row) => `      - ${JSON.stringify(row)}\n`).join('')}`);
  return `blocks:\n${items.join('')}`;
}

export const SCHEMA = {
  type: 'object',
  required: ['blocks'],
  additionalProperties: false,
  properties: {
    blocks: {
      type: 'array',
      items: {
        type: 'object',
        required: ['name', 'size', 'rows'],
        additionalProperties: false,
        properties: {
          name: { type: 'string', pattern: '^[A-Za-z][A-Za-z0-9_]*$' },
          size: { type: 'number', minimum: 0.25 },
          rows: { type: 'array', items: { type: 'array', minItems: 4, maxItems: 4, items: { type: 'string' } } },
        },
      },
    },
  },
};

interface Written {
  readonly name: string;
  readonly rows: readonly (readonly string[])[];
}

const CELLS = ['ink', 'sand', 'ink/sand', 'sand/ink', 'ink\\sand', 'sand\\ink', 'ink|sand', 'sand-ink', '(ink|sand)-(sand|ink)', 'ink/sand@90'];

/** Seven lines a block in a pattern. */
function blocksOf(lines: number): readonly Written[] {
  const pick = random(7);
  const kinds = Array.from({ length: 200 }, () => Array.from({ length: 4 }, () => CELLS[pick.below(CELLS.length)] ?? 'ink'));
  const row = (): readonly string[] => (kinds[pick.below(kinds.length)] ?? []).map((cell) => (pick.below(2) === 0 ? cell : cell.replace('sand', 'rust')));
  return Array.from({ length: Math.max(1, Math.floor(lines / 7.1)) }, (_, index) => ({ name: `Buoy${index + 1}`, rows: Array.from({ length: 4 }, row) }));
}
