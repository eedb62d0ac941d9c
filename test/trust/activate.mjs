// Activates the bundled extension with a stand-in for the editor, measures the processor's time of it, and plays a build in a folder that is not trusted. Prints JSON.
import Module, { createRequire } from 'node:module';
import * as stub from './stub-vscode.mjs';

const [, , bundle] = process.argv;
const load = Module._load;
Module._load = (name, ...rest) => (name === 'vscode' ? stub.api : load(name, ...rest));
const context = { subscriptions: [], asAbsolutePath: (path) => `/nowhere/${path}`, extensionUri: stub.api.Uri, workspaceState: { get: () => undefined, update: () => undefined } };

const before = process.cpuUsage();
const extension = createRequire(import.meta.url)(bundle);
void extension.activate(context).catch(() => undefined);
const { user, system } = process.cpuUsage(before);

setTimeout(async () => {
  const said = { milliseconds: (user + system) / 1000, commands: [...stub.commands.keys()] };
  const document = { languageId: 'quilt', isUntitled: false, isDirty: true, uri: { scheme: 'file', toString: () => 'file:///a.quilt' }, save: () => stub.asked.push('SAVED') };
  stub.known.set('workspace.isTrusted', false);
  stub.known.set('window.activeTextEditor', { document });
  stub.asked.length = 0;
  await stub.commands.get('scant.build')?.();
  for (const listen of stub.events.get('workspace.onDidSaveTextDocument') ?? []) if (typeof listen === 'function') listen(document);
  process.stdout.write(JSON.stringify({ ...said, untrusted: [...stub.asked] }), () => process.exit());
}, 50);
