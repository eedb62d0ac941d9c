// What goes wrong around the editor: its server is killed in the middle of its work, and the editor goes on.
import { equal, ok } from 'node:assert/strict';
import { readFileSync, readdirSync } from 'node:fs';
import * as vscode from 'vscode';
import { test, until } from './framework.ts';
import { openPattern } from './workspace.ts';

const PATTERN = 'fabric ink #22345c "Night"\nblock Solo 6" { ink }\n';

test('the server is killed while it works, comes back, and knows what was typed meanwhile', async () => {
  const { document } = await openPattern(PATTERN);
  await until(() => serversOf(process.pid).length === 1);
  const [before] = serversOf(process.pid);
  ok(before !== undefined);
  const working = Promise.all(Array.from({ length: 20 }, () => hover(document)));
  process.kill(before, 'SIGKILL');
  const edit = new vscode.WorkspaceEdit();
  edit.insert(document.uri, new vscode.Position(1, 0), 'fabric rust #a4502e "Rust"\n');
  await vscode.workspace.applyEdit(edit);
  await Promise.resolve(working).catch(() => undefined);
  await until(() => serversOf(process.pid).some((pid) => pid !== before));
  await until(async () => (await hover(document)).includes('Rust'));
  await until(() => vscode.languages.getDiagnostics(document.uri).length === 0);
  equal(serversOf(process.pid).length, 1);
});

async function hover(document: vscode.TextDocument): Promise<string> {
  const hovers = await vscode.commands.executeCommand<vscode.Hover[]>('vscode.executeHoverProvider', document.uri, new vscode.Position(1, 8));
  return hovers.flatMap(({ contents }) => contents.map((each) => (each instanceof vscode.MarkdownString ? each.value : ''))).join('\n');
}

/** Language servers that this process has started, where the system tells (Linux). */
function serversOf(parent: number): number[] {
  return readdirSync('/proc').filter((name) => /^\d+$/.test(name)).map(Number).filter((pid) => {
    try {
      const isChild = new RegExp(`^PPid:\\s*${parent}$`, 'm').test(readFileSync(`/proc/${pid}/status`, 'utf8'));
      return isChild && /scant\.cjs\0lsp/.test(readFileSync(`/proc/${pid}/cmdline`, 'utf8'));
    } catch {
      return false;
    }
  });
}
