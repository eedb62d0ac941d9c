/** What stands beside the picture: sentences, the step in hand, a table of figures. */
import type { Preview, Table } from '../../../server/src/lsp/requests.ts';

/** Fills the element; nothing is touched that says the same already. */
export function besidesIn(element: HTMLElement): { readonly show: (preview: Preview | null) => boolean } {
  let last = '';
  const show = (preview: Preview | null): boolean => {
    const { notes = [], table = null, step = null } = preview ?? {};
    const now = JSON.stringify([notes, table, step]);
    const isThere = notes.length > 0 || table !== null || step !== null;
    if (now === last) return isThere;
    last = now;
    const parts = [...(step ? [heading(step.title), paragraph(step.text)] : []), ...notes.map(paragraph), ...(table ? [tableOf(table)] : [])];
    element.replaceChildren(...parts);
    return isThere;
  };
  return { show };
}

function heading(text: string): HTMLElement {
  const element = document.createElement('h2');
  element.textContent = text;
  return element;
}

function paragraph(text: string): HTMLElement {
  const element = document.createElement('p');
  element.textContent = text;
  return element;
}

function tableOf({ caption, heads, rows }: Table): HTMLTableElement {
  const table = document.createElement('table');
  table.createCaption().textContent = caption;
  const head = table.createTHead().insertRow();
  head.append(...heads.map((text) => (text === '' ? document.createElement('td') : headCell(text, 'col'))));
  const body = table.createTBody();
  for (const [name = '', ...cells] of rows) {
    const row = body.insertRow();
    row.append(headCell(name, 'row'));
    for (const cell of cells) row.insertCell().textContent = cell;
  }
  return table;
}

function headCell(text: string, scope: 'col' | 'row'): HTMLTableCellElement {
  const cell = document.createElement('th');
  cell.scope = scope;
  cell.textContent = text;
  return cell;
}
