/** Starts the server, offers the commands and the previews, wherever the extension runs. Knows nothing about quilts. */
import { commands, window, workspace, type Disposable, type ExtensionContext } from 'vscode';
import { toggleAnnotations } from './annotations.ts';
import { newPattern, openWalkthrough } from './begin.ts';
import { build, buildOnSave } from './build.ts';
import { explain, offerRulePages } from './explain.ts';
import { fencedQuilts, type MarkdownIt } from './fenced.ts';
import { offerOutline } from './outline.ts';
import { offerPreviews } from './previews.ts';
import { startServer, type Place, type Server } from './server.ts';
import { offerStatus } from './status.ts';

let server: Server | undefined;

/** The views that the server draws, each by a command. */
const VIEW_COMMANDS = {
  'scant.viewWhole': 'whole',
  'scant.viewBlock': 'block',
  'scant.viewValues': 'values',
  'scant.viewMirrors': 'mirrors',
  'scant.viewSettings': 'settings',
  'scant.viewFabrics': 'fabrics',
  'scant.viewSewing': 'sewing',
  'scant.viewPressing': 'pressing',
  'scant.viewCutting': 'cutting',
  'scant.viewSizes': 'sizes',
} as const;

/** What the Markdown preview is given. */
export interface Offer {
  readonly extendMarkdownIt: (markdown: MarkdownIt) => MarkdownIt;
}

/** What only some places have: `writes` to a disk, and `offers` of what needs one. */
export interface Around {
  readonly writes: boolean;
  readonly offers: readonly Disposable[];
}

export async function start(context: ExtensionContext, place: Place, { writes, offers }: Around): Promise<Offer> {
  const output = window.createOutputChannel('Scant', { log: true });
  const running = startServer(place, output);
  server = running;
  const previews = offerPreviews(context, running);
  context.subscriptions.push(
    output,
    running,
    previews,
    offerRulePages(running),
    offerStatus(running),
    offerOutline(running),
    ...offers,
    workspace.onDidSaveTextDocument((document) => buildOnSave(running, document)),
    commands.registerCommand('scant.openPreview', () => previews.openFollowing()),
    commands.registerCommand('scant.openLockedPreview', () => previews.openLocked()),
    commands.registerCommand('scant.togglePreviewLock', () => previews.toggleLock()),
    ...Object.entries(VIEW_COMMANDS).map(([command, view]) => commands.registerCommand(command, () => previews.look(view))),
    commands.registerCommand('scant.savePicture', () => previews.save()),
    commands.registerCommand('scant.printPicture', () => previews.print()),
    commands.registerCommand('scant.previewInOwnWindow', () => previews.moveToOwnWindow()),
    commands.registerCommand('scant.build', () => build(running)),
    commands.registerCommand('scant.explain', (rule?: unknown) => explain(running, typeof rule === 'string' ? rule : undefined)),
    commands.registerCommand('scant.toggleAnnotations', () => toggleAnnotations()),
    commands.registerCommand('scant.newPattern', () => newPattern()),
    commands.registerCommand('scant.openWalkthrough', () => openWalkthrough()),
    commands.registerCommand('scant.restartServer', () => running.restart()),
    commands.registerCommand('scant.showOutput', () => output.show(true)),
  );
  await commands.executeCommand('setContext', 'scant.writes', writes);
  await commands.executeCommand('setContext', 'scant.running', true);
  await running.ready();
  return { extendMarkdownIt: fencedQuilts(running) };
}

export async function stop(): Promise<void> {
  await server?.stop();
}
