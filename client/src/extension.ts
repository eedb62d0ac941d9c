/** Where the editor comes in: starts the server, offers the commands and the previews. Knows nothing about quilts. */
import { commands, window, workspace, type ExtensionContext } from 'vscode';
import { build, buildOnSave } from './build.ts';
import { explain, offerRulePages } from './explain.ts';
import { offerPreviews } from './previews.ts';
import { startServer, type Server } from './server.ts';

let server: Server | undefined;

export async function activate(context: ExtensionContext): Promise<void> {
  const output = window.createOutputChannel('Scant', { log: true });
  const running = startServer(context.asAbsolutePath('dist/server.cjs'), output);
  server = running;
  const previews = offerPreviews(context, running);
  context.subscriptions.push(
    output,
    running,
    previews,
    offerRulePages(running),
    workspace.onDidSaveTextDocument((document) => buildOnSave(running, document)),
    commands.registerCommand('scant.openPreview', () => previews.openFollowing()),
    commands.registerCommand('scant.openLockedPreview', () => previews.openLocked()),
    commands.registerCommand('scant.togglePreviewLock', () => previews.toggleLock()),
    commands.registerCommand('scant.build', () => build(running)),
    commands.registerCommand('scant.explain', (rule?: unknown) => explain(running, typeof rule === 'string' ? rule : undefined)),
    commands.registerCommand('scant.restartServer', () => running.restart()),
    commands.registerCommand('scant.showOutput', () => output.show(true)),
  );
  await commands.executeCommand('setContext', 'scant.running', true);
  await running.ready();
}

export async function deactivate(): Promise<void> {
  await server?.stop();
}
