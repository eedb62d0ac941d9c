/** Holds every message of the server against the official types: a JSON schema is made from them once a run. */
import { fileURLToPath } from 'node:url';
import { Ajv, type ValidateFunction } from 'ajv';
import { createGenerator } from 'ts-json-schema-generator';

export interface Validator {
  /** What is wrong with the answer to a request; empty when nothing is. An unknown method is wrong. */
  readonly result: (method: string, value: unknown) => readonly string[];
  readonly asked: (method: string, params: unknown) => readonly string[];
  readonly told: (method: string, params: unknown) => readonly string[];
  readonly failure: (error: unknown) => readonly string[];
}

let made: Validator | undefined;

export function validator(): Validator {
  return (made ??= make());
}

function make(): Validator {
  const path = fileURLToPath(new URL('messages.ts', import.meta.url));
  const tsconfig = fileURLToPath(new URL('../../tsconfig.json', import.meta.url));
  const schema = createGenerator({ path, tsconfig, skipTypeCheck: true, additionalProperties: false, expose: 'all' }).createSchema('*');
  const ajv = new Ajv({ strict: false, allErrors: true, allowUnionTypes: true }).addSchema(schema, 'messages');
  const check = (pointer: string) => {
    const validate = ajv.getSchema(`messages#/definitions/${pointer}`) as ValidateFunction | undefined;
    return (value: unknown): readonly string[] => {
      if (!validate) return [`nothing is known of ${pointer}`];
      if (validate(value)) return beyondSchema(value);
      return (validate.errors ?? []).map(({ instancePath, message, params }) => `${instancePath} ${message ?? ''} ${JSON.stringify(params)}`);
    };
  };
  const of = (type: 'Results' | 'Asked' | 'Told') => (method: string, value: unknown): readonly string[] => check(`${type}/properties/${pointerOf(method)}`)(value);
  return { result: of('Results'), asked: of('Asked'), told: of('Told'), failure: check('Failure') };
}

function pointerOf(name: string): string {
  return encodeURIComponent(name.replaceAll('~', '~0').replaceAll('/', '~1'));
}

/** What types cannot say: numbers of the protocol are whole, ranges do not run backwards. */
function beyondSchema(value: unknown, path = ''): readonly string[] {
  if (Array.isArray(value)) return value.flatMap((each, index) => beyondSchema(each, `${path}/${index}`));
  if (typeof value !== 'object' || value === null) return [];
  const fields = value as Record<string, unknown>;
  const own: string[] = [];
  for (const name of ['line', 'character', 'code', 'severity', 'kind', 'version']) {
    const field = fields[name];
    if (typeof field === 'number' && !Number.isInteger(field)) own.push(`${path}/${name} is ${field}`);
  }
  if (isRange(fields) && isBefore(fields.end, fields.start)) own.push(`${path} runs backwards`);
  return [...own, ...Object.entries(fields).flatMap(([name, field]) => beyondSchema(field, `${path}/${name}`))];
}

interface Spot {
  readonly line: number;
  readonly character: number;
}

function isRange(value: Record<string, unknown>): value is { start: Spot; end: Spot } & Record<string, unknown> {
  return typeof value.start === 'object' && typeof value.end === 'object';
}

function isBefore(a: Spot, b: Spot): boolean {
  return a.line < b.line || (a.line === b.line && a.character < b.character);
}
