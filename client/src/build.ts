/** Writing a pattern's outputs: on command with word of where they went, on save in silence. */
import { ProgressLocation, Uri, commands, window, workspace, type TextDocument } from 'vscode';
import type { BuildAnswer, BuildParams } from '../../server/src/lsp/requests.ts';
import type { Server } from './server.ts';

type OnSave = 'off' | 'previewAndCutList' | 'everything';

/** Builds the pattern of the active editor and says where the files are. */
export async function build(server: Server): Promise<void> {
  const document = window.activeTextEditor?.document;
  if (document?.languageId !== 'quilt') return void window.showInformationMessage('Open a .quilt file to build it.');
  if (!workspace.isTrusted) return void window.showWarningMessage('Scant writes no files in a folder you have not trusted.');
  if (document.isUntitled) return void window.showInformationMessage('Save the pattern first: its outputs are written beside it.');
  if (document.isDirty && !(await document.save())) return;
  const title = 'Building the pattern';
  const answer = await window.withProgress({ location: ProgressLocation.Window, title }, () => write(server, { uri: document.uri.toString(), what: 'everything' }));
  await report(answer);
}

/** Builds what the setting says. Only files with a place on disk, only in trusted folders; what is wrong is in the problems. */
export function buildOnSave(server: Server, document: TextDocument): void {
  if (document.languageId !== 'quilt' || document.uri.scheme !== 'file' || !workspace.isTrusted) return;
  const when = workspace.getConfiguration('scant', document).get<OnSave>('buildOnSave', 'everything');
  if (when === 'off') return;
  void write(server, { uri: document.uri.toString(), what: when === 'everything' ? 'on_save' : 'preview_and_cut_list' });
}

const busy = new Map<string, { next: BuildParams | undefined; done: Promise<BuildAnswer | undefined> }>();

/** One build of a file at a time; of those that ask meanwhile only the last is done. */
function write(server: Server, params: BuildParams): Promise<BuildAnswer | undefined> {
  const current = busy.get(params.uri);
  if (current) {
    current.next = current.next?.what === 'everything' ? current.next : params;
    return current.done;
  }
  const job = { next: undefined as BuildParams | undefined, done: Promise.resolve<BuildAnswer | undefined>(undefined) };
  job.done = (async () => {
    let answer = await server.ask('scant/build', params);
    for (let next = take(job); next; next = take(job)) answer = await server.ask('scant/build', next);
    return answer;
  })().finally(() => busy.delete(params.uri));
  busy.set(params.uri, job);
  return job.done;
}

function take(job: { next: BuildParams | undefined }): BuildParams | undefined {
  const { next } = job;
  job.next = undefined;
  return next;
}

async function report(answer: BuildAnswer | undefined): Promise<void> {
  if (!answer) return void window.showErrorMessage('The pattern could not be built; the output of Scant says more.');
  if (answer.refused) return void window.showWarningMessage(answer.refused.message);
  const { folder, written, unchanged } = answer;
  const count = written.length === 1 ? '1 file is new' : `${written.length} files are new`;
  const message = written.length === 0 ? `Nothing to write: all ${unchanged} files are up to date.` : `${count}, ${unchanged} unchanged.`;
  const show = 'Show the Folder';
  const chosen = await window.showInformationMessage(message, ...(folder === null ? [] : [show]));
  if (chosen !== show || folder === null) return;
  const uri = Uri.parse(folder);
  await commands.executeCommand(workspace.getWorkspaceFolder(uri) ? 'revealInExplorer' : 'revealFileInOS', uri);
}
