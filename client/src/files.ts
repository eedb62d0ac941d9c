/** Gives the server the patterns that it cannot read itself: those of folders that have no place on its disk. */
import { Disposable, FileType, Uri, workspace, type WorkspaceFolder } from 'vscode';
import { State, type BaseLanguageClient } from 'vscode-languageclient';
import type { Notifications } from '../../server/src/lsp/requests.ts';

type Files = Notifications['scant/files']['files'];

/** So many patterns of a folder are given. */
const MOST = 1000;

/** `isGiven`: whether a folder is one that the server cannot read. */
export function giveFiles(client: BaseLanguageClient, isGiven: (folder: Uri) => boolean): Disposable {
  const tell = async (files: Promise<Files>): Promise<void> => {
    const found = await files;
    if (client.isRunning() && found.length > 0) await client.sendNotification('scant/files', { files: found });
  };
  const giveFolders = (folders: readonly WorkspaceFolder[]): void => {
    for (const { uri } of folders) if (isGiven(uri)) void tell(patternsIn(uri));
  };
  const changed = (uri: Uri): void => {
    const folder = workspace.getWorkspaceFolder(uri);
    if (folder && isGiven(folder.uri)) void tell(read(uri).then((file) => [file]));
  };
  const watcher = workspace.createFileSystemWatcher('**/*.quilt');
  return Disposable.from(
    watcher,
    watcher.onDidCreate(changed),
    watcher.onDidChange(changed),
    watcher.onDidDelete(changed),
    workspace.onDidChangeWorkspaceFolders(({ added }) => giveFolders(added)),
    client.onDidChangeState(({ newState }) => {
      if (newState === State.Running) giveFolders(workspace.workspaceFolders ?? []);
    }),
  );
}

/** Folder by folder, the nearest first; hidden ones and those of packages are left out. */
async function patternsIn(folder: Uri): Promise<Files> {
  const folders = [folder];
  const found: Uri[] = [];
  for (const each of folders) {
    const entries = await workspace.fs.readDirectory(each).then((all) => all, () => []);
    for (const [name, type] of entries) {
      const uri = Uri.joinPath(each, name);
      if (type === FileType.Directory && !name.startsWith('.') && name !== 'node_modules') folders.push(uri);
      else if (type === FileType.File && name.endsWith('.quilt') && found.length < MOST) found.push(uri);
    }
    if (found.length >= MOST) break;
  }
  return Promise.all(found.map(read));
}

async function read(uri: Uri): Promise<Files[number]> {
  const bytes = await workspace.fs.readFile(uri).then((all) => all, () => undefined);
  return { uri: uri.toString(), text: bytes === undefined ? null : new TextDecoder().decode(bytes) };
}
