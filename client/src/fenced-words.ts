/** A drawn pattern as a piece of a Markdown page. */
import type { Drawn } from '../../server/src/lsp/requests.ts';

/** The picture as an image, so that nothing in it can act on the page; the errors as text. */
export function figureOf({ svg, errors }: Drawn): string {
  const image = svg === null ? '' : `<p><img alt="The pattern, drawn" style="max-width:24em;max-height:24em" src="data:image/svg+xml;base64,${base64(svg)}"></p>`;
  const list = errors.length === 0 ? '' : `<ul>${errors.map((each) => `<li>Line ${escaped(each)}</li>`).join('')}</ul>`;
  return image + list;
}

function base64(text: string): string {
  return btoa(Array.from(new TextEncoder().encode(text), (byte) => String.fromCharCode(byte)).join(''));
}

function escaped(text: string): string {
  return text.replace(/[&<>"']/g, (character) => `&#${character.charCodeAt(0)};`);
}
