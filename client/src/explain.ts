/** The page of a rule: why it matters, an example, the usual mends. The server has the words. */
import { Uri, commands, languages, window, workspace, type Disposable } from 'vscode';
import { RULE_PAGES, ruleOf } from './pages.ts';
import type { Server } from './server.ts';

/** Lets the editor open `scant-rule:/low-contrast.md`, which is where the code of a problem links to. */
export function offerRulePages(server: Server): Disposable {
  return workspace.registerTextDocumentContentProvider(RULE_PAGES, {
    provideTextDocumentContent: async (uri, token) =>
      (await server.ask('scant/explain', { rule: ruleOf(uri.path) }, token))?.markdown ?? 'There is no such rule.',
  });
}

/** Shows the page of a rule; asks which one, the problem under the cursor first. */
export async function explain(server: Server, rule: string | undefined): Promise<void> {
  const chosen = rule ?? (await pick(server));
  if (chosen === undefined) return;
  await commands.executeCommand('markdown.showPreviewToSide', Uri.from({ scheme: RULE_PAGES, path: `/${chosen}.md` }));
}

async function pick(server: Server): Promise<string | undefined> {
  const rules = (await server.ask('scant/explain', {}))?.rules ?? [];
  const near = rulesAtCursor();
  const sorted = [...rules].sort((a, b) => Number(near.has(b.id)) - Number(near.has(a.id)));
  const items = sorted.map(({ id, severity, title }) => ({ label: id, description: severity, detail: title }));
  return (await window.showQuickPick(items, { title: 'Explain a Rule', matchOnDetail: true }))?.label;
}

function rulesAtCursor(): ReadonlySet<string> {
  const editor = window.activeTextEditor;
  if (!editor) return new Set();
  const here = languages.getDiagnostics(editor.document.uri).filter((each) => each.source === 'scant' && each.range.contains(editor.selection.active));
  return new Set(here.map(({ code }) => String(typeof code === 'object' ? code.value : code)));
}
