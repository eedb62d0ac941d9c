/** The view in the side bar: sizes, fabrics, blocks and problems of the active pattern. Every row leads to its text. */
import { Disposable, EventEmitter, Range, ThemeColor, ThemeIcon, TreeItem, TreeItemCollapsibleState, Uri, window, type Command, type TreeDataProvider } from 'vscode';
import type { Summary, SummaryRow } from '../../server/src/lsp/requests.ts';
import { pace } from './pace.ts';
import type { Server } from './server.ts';

/** A group of rows, or a row. */
export interface Entry {
  readonly label: string;
  readonly detail: string;
  readonly icon: string | undefined;
  readonly row: SummaryRow | undefined;
  readonly entries: readonly Entry[];
}

const PAUSE = 500;

export function offerOutline(server: Server): Disposable {
  const changed = new EventEmitter<undefined>();
  let entries: readonly Entry[] = [];
  let shown: string | undefined;
  const provider: TreeDataProvider<Entry> = {
    onDidChangeTreeData: changed.event,
    getChildren: (entry) => [...(entry?.entries ?? entries)],
    getTreeItem: itemOf,
  };
  const view = window.createTreeView('scant.pattern', { treeDataProvider: provider });
  const { ask, stop } = pace(PAUSE, async () => {
    if (!view.visible) return;
    const { document } = window.activeTextEditor ?? {};
    if (document?.languageId === 'quilt') shown = document.uri.toString();
    const summary = shown === undefined ? undefined : await server.ask('scant/summary', { uri: shown });
    entries = summary ? entriesOf(summary) : [];
    view.description = summary?.title ?? '';
    changed.fire(undefined);
  });
  const listeners = [
    view, changed,
    view.onDidChangeVisibility(ask),
    window.onDidChangeActiveTextEditor(ask),
    server.onChanged((uris) => {
      if (!uris || uris.includes(shown ?? '')) ask();
    }),
  ];
  ask();
  return Disposable.from(...listeners, { dispose: stop });
}

/** Groups without rows are left out. */
export function entriesOf({ sizes, fabrics, blocks, problems }: Summary): readonly Entry[] {
  const group = (label: string, icon: string, entries: readonly Entry[]): readonly Entry[] => (entries.length === 0 ? [] : [{ label, detail: `${entries.length}`, icon, row: undefined, entries }]);
  const rows = (each: readonly SummaryRow[]): readonly Entry[] => each.map((row) => ({ label: row.label, detail: row.detail, icon: undefined, row, entries: [] }));
  const icons = { error: 'error', warning: 'warning', hint: 'info' };
  return [
    ...group('Sizes', 'screen-normal', rows(sizes)),
    ...group('Fabrics', 'symbol-color', rows(fabrics)),
    ...group('Blocks', 'symbol-class', rows(blocks)),
    ...group('Problems', 'checklist', problems.map(({ rule, title, severity, rows: found }) => ({ label: rule, detail: title, icon: icons[severity], row: undefined, entries: rows(found) }))),
  ];
}

function itemOf({ label, detail, icon, row, entries }: Entry): TreeItem {
  const item = new TreeItem(label, entries.length === 0 ? TreeItemCollapsibleState.None : TreeItemCollapsibleState.Expanded);
  item.description = detail;
  item.tooltip = detail === '' ? label : `${label}: ${detail}`;
  const command = row && commandFor(row);
  if (command) item.command = command;
  if (icon !== undefined) item.iconPath = new ThemeIcon(icon, icon === 'error' ? new ThemeColor('list.errorForeground') : undefined);
  else if (row?.colour) item.iconPath = swatch(row.colour);
  return item;
}

function commandFor({ at }: SummaryRow): Command | undefined {
  if (!at) return undefined;
  const { start, end } = at.range;
  return { title: 'Show the text', command: 'vscode.open', arguments: [Uri.parse(at.uri), { selection: new Range(start.line, start.character, end.line, end.character) }] };
}

function swatch(colour: string): Uri {
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="16" height="16"><rect x="1.5" y="1.5" width="13" height="13" fill="${colour}" stroke="#808080"/></svg>`;
  return Uri.from({ scheme: 'data', path: `image/svg+xml;base64,${btoa(svg)}` });
}
