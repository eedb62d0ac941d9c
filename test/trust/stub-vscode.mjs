// Stands in for the editor's API: any name is a class that can be extended, called and asked for anything; a few answer as the editor would.
const known = new Map();
const commands = new Map();
const events = new Map();
const asked = [];

function anything(path) {
  if (known.has(path)) return known.get(path);
  const target = function Anything() {};
  const stub = new Proxy(target, {
    get: (_, name) => {
      if (name === 'prototype' || typeof name === 'symbol') return target[name];
      if (name === 'then') return undefined;
      return Reflect.has(target, name) && name !== 'name' && name !== 'length' ? target[name] : anything(`${path}.${name}`);
    },
    set: () => true,
    apply: (_, __, args) => {
      asked.push(path);
      if (/Message$|executeCommand$|withProgress$/.test(path)) return Promise.resolve(undefined);
      if (path === 'commands.registerCommand') commands.set(args[0], args[1]);
      if (/^workspace\.on|^window\.on/.test(path)) events.set(path, [...(events.get(path) ?? []), args[0]]);
      return anything(`${path}()`);
    },
    construct: (_, __, newTarget) => (newTarget === stub ? anything(`new ${path}`) : Reflect.construct(Object, [], newTarget)),
  });
  known.set(path, stub);
  return stub;
}

const api = new Proxy({}, { get: (_, name) => (typeof name === 'symbol' ? undefined : anything(String(name))), has: () => true });
known.set('version', '1.100.0');
known.set('workspace.isTrusted', true);
known.set('workspace.textDocuments', []);
known.set('workspace.workspaceFolders', []);
known.set('workspace.notebookDocuments', []);
known.set('window.visibleTextEditors', []);
known.set('window.activeTextEditor', undefined);

export { api, asked, commands, events, known };
