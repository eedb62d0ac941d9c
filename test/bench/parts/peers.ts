/** The language services of JSON and YAML in process, on the same blocks with a schema: what ours is measured beside. */
import { getLanguageService as jsonService } from 'vscode-json-languageservice';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { getLanguageService as yamlService } from 'yaml-language-server';
import { jsonOf, SCHEMA, yamlOf } from './texts.ts';

export interface Peer {
  /** Milliseconds to the problems of a text not seen before. */
  readonly open: number;
  /** One edit, then to its problems. */
  readonly keystroke: () => Promise<unknown>;
}

export function jsonPeer(lines: number): Promise<Peer> {
  const service = jsonService({});
  service.configure({ validate: true, schemas: [{ uri: 'schema:blocks', fileMatch: ['*.json'], schema: SCHEMA }] });
  return peerOf(jsonOf(lines), 'bench.json', async (document) => service.doValidation(document, service.parseJSONDocument(document)));
}

export function yamlPeer(lines: number): Promise<Peer> {
  const service = yamlService({ schemaRequestService: () => Promise.resolve(JSON.stringify(SCHEMA)), workspaceContext: { resolveRelativePath: (path: string) => path } });
  service.configure({ validate: true, schemas: [{ uri: 'schema:blocks', fileMatch: ['*.yaml'], schema: SCHEMA }] });
  return peerOf(yamlOf(lines), 'bench.yaml', async (document) => service.doValidation(document, false));
}

/** A peer must find the fault that each second edit makes, or it would not be measured at work. */
async function peerOf(text: string, name: string, validate: (document: TextDocument) => Promise<readonly unknown[]>): Promise<Peer> {
  let document = TextDocument.create(`file:///${name}`, name.endsWith('json') ? 'json' : 'yaml', 1, text);
  const at = text.indexOf('6', text.indexOf('"size": 6', text.length / 2) + text.indexOf('size: 6', text.length / 2) + 1);
  const check = async (wrong: boolean): Promise<void> => {
    const found = await validate(document);
    if (found.length !== (wrong ? 1 : 0)) throw new Error(`${name} has ${found.length} problems`);
  };
  const start = performance.now();
  await check(false);
  const open = performance.now() - start;
  let turn = 0;
  return {
    open,
    keystroke: async () => {
      const wrong = turn % 2 === 0;
      document = TextDocument.update(document, [{ range: { start: document.positionAt(at), end: document.positionAt(at + 1) }, text: wrong ? '0' : '6' }], turn + 2);
      await check(wrong);
      turn += 1;
    },
  };
}
