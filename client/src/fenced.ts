/** Fenced `quilt` blocks in the Markdown preview: the picture under the text. Pictures come from the server and are remembered. */
import { commands } from 'vscode';
import type { Drawn } from '../../server/src/lsp/requests.ts';
import type { Server } from './server.ts';
import { figureOf } from './fenced-words.ts';

/** The part of markdown-it that is used. */
export interface MarkdownIt {
  readonly renderer: { readonly rules: { fence?: Fence } };
}

type Fence = (tokens: readonly { readonly info: string; readonly content: string }[], index: number, ...rest: unknown[]) => string;

/** So many pictures are remembered. */
const MOST = 50;

export function fencedQuilts(server: Server): (markdown: MarkdownIt) => MarkdownIt {
  const drawn = new Map<string, Drawn | undefined>();
  const draw = async (text: string): Promise<void> => {
    drawn.set(text, undefined);
    const picture = await server.ask('scant/draw', { text });
    if (picture) drawn.set(text, picture);
    for (const key of [...drawn.keys()].slice(0, -MOST)) drawn.delete(key);
    await commands.executeCommand('markdown.preview.refresh');
  };
  return (markdown) => {
    const usual = markdown.renderer.rules.fence;
    markdown.renderer.rules.fence = (tokens, index, ...rest) => {
      const token = tokens[index];
      const html = usual?.(tokens, index, ...rest) ?? '';
      if (!token || token.info.trim().split(/\s+/)[0] !== 'quilt') return html;
      if (!drawn.has(token.content)) void draw(token.content);
      const picture = drawn.get(token.content);
      return picture ? html + figureOf(picture) : html;
    };
    return markdown;
  };
}
