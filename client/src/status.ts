/** The line at the foot of the window: what comes out of the active pattern, or how many errors it has. */
import { Disposable, StatusBarAlignment, window } from 'vscode';
import type { Server } from './server.ts';
import { pace } from './pace.ts';
import { statusFor } from './status-words.ts';

/** Asked for at most this often while one types, in milliseconds. */
const PAUSE = 300;

export function offerStatus(server: Server): Disposable {
  const item = window.createStatusBarItem('scant.status', StatusBarAlignment.Left, 10);
  item.name = 'Scant';
  const uri = (): string | undefined => (window.activeTextEditor?.document.languageId === 'quilt' ? window.activeTextEditor.document.uri.toString() : undefined);
  const { ask, stop } = pace(PAUSE, async () => {
    const asked = uri();
    const headline = asked === undefined ? null : await server.ask('scant/headline', { uri: asked });
    if (asked !== uri()) return ask();
    const status = headline ? statusFor(headline) : undefined;
    if (!status) return item.hide();
    Object.assign(item, status);
    item.show();
  });
  const listeners = [
    window.onDidChangeActiveTextEditor(ask),
    server.onChanged((uris) => {
      const shown = uri();
      if (shown !== undefined && (!uris || uris.includes(shown))) ask();
    }),
  ];
  ask();
  return Disposable.from(...listeners, item, { dispose: stop });
}
