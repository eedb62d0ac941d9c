#!/usr/bin/env node
// Stands where @vscode/test-electron expects the editor's executable: runs a suite in the served editor, prints its lines, exits with its code.
import { parseArgs } from 'node:util';
import { openBridge } from './bridge.ts';
import { openPage } from './browser.ts';
import { runProgram } from './cleanup.ts';
import { addressOf, project, remote, serveEditor } from './serve.ts';
import { runSuite } from './suite-run.ts';

await runProgram(main);

async function main(): Promise<number> {
  const { values, positionals } = parseArgs({
    options: { extensionDevelopmentPath: { type: 'string', multiple: true }, extensionTestsPath: { type: 'string' } },
    strict: false,
    allowPositionals: true,
  });
  const page = await openPage({ width: 1280, height: 800 });
  const editor = await serveEditor({ environment: { SCANT_USER: await openBridge(page) } });
  const paths = [
    ...(values.extensionDevelopmentPath ?? []).map((path) => ['extensionDevelopmentPath', remote(editor, String(path))] as const),
    ['extensionTestsPath', remote(editor, String(values.extensionTestsPath))] as const,
  ];
  return runSuite(editor, page, addressOf(editor, positionals[0] ?? project, paths));
}
