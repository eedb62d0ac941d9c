/** Where the editor comes in: starts the server, offers the commands and the previews. Knows nothing about quilts. */
import { commands, window, workspace, type ExtensionContext } from 'vscode';
import { toggleAnnotations } from './annotations.ts';
import { newPattern, openWalkthrough } from './begin.ts';
import { build, buildOnSave } from './build.ts';
import { explain, offerRulePages } from './explain.ts';
import { fencedQuilts, type MarkdownIt } from './fenced.ts';
import { offerOutline } from './outline.ts';
import { offerPreviews } from './previews.ts';
import { startServer, type Server } from './server.ts';
import { offerStatus } from './status.ts';
import { offerTasks } from './tasks.ts';

let server: Server | undefined;

/** What the Markdown preview is given. */
export interface Offer {
  readonly extendMarkdownIt: (markdown: MarkdownIt) => MarkdownIt;
}

export async function activate(context: ExtensionContext): Promise<Offer> {
  const output = window.createOutputChannel('Scant', { log: true });
  const running = startServer(context.asAbsolutePath('dist/server.cjs'), output);
  server = running;
  const previews = offerPreviews(context, running);
  context.subscriptions.push(
    output,
    running,
    previews,
    offerRulePages(running),
    offerStatus(running),
    offerOutline(running),
    offerTasks(context.asAbsolutePath('dist/scant.cjs')),
    workspace.onDidSaveTextDocument((document) => buildOnSave(running, document)),
    commands.registerCommand('scant.openPreview', () => previews.openFollowing()),
    commands.registerCommand('scant.openLockedPreview', () => previews.openLocked()),
    commands.registerCommand('scant.togglePreviewLock', () => previews.toggleLock()),
    commands.registerCommand('scant.build', () => build(running)),
    commands.registerCommand('scant.explain', (rule?: unknown) => explain(running, typeof rule === 'string' ? rule : undefined)),
    commands.registerCommand('scant.toggleAnnotations', () => toggleAnnotations()),
    commands.registerCommand('scant.newPattern', () => newPattern()),
    commands.registerCommand('scant.openWalkthrough', () => openWalkthrough()),
    commands.registerCommand('scant.restartServer', () => running.restart()),
    commands.registerCommand('scant.showOutput', () => output.show(true)),
  );
  await commands.executeCommand('setContext', 'scant.running', true);
  await running.ready();
  return { extendMarkdownIt: fencedQuilts(running) };
}

export async function deactivate(): Promise<void> {
  await server?.stop();
}
