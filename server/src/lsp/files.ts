/** All patterns of the workspace, one after another: the editor is told how far it is, and may stop it. */
import { LSPErrorCodes, ResponseError, type CancellationToken, type WorkDoneProgressReporter } from 'vscode-languageserver';
import type { Snapshot } from '../snapshot.ts';
import type { AnswerContext } from './context.ts';
import { turn } from './guard.ts';

export interface Walk {
  readonly token: CancellationToken;
  /** Where the editor hears of progress, if it wants to. */
  readonly progress: WorkDoneProgressReporter | undefined;
  readonly title: string;
}

/** Work goes on for so long before messages that have come in are looked at, in milliseconds. */
const SLICE = 15;

/** Files that cannot be read are left out. Throws `RequestCancelled`. */
export async function everyPattern({ filesOf, snapshotOf }: Pick<AnswerContext, 'filesOf' | 'snapshotOf'>, { token, progress, title }: Walk): Promise<readonly Snapshot[]> {
  const uris = filesOf();
  const found: Snapshot[] = [];
  progress?.begin(title, 0, undefined, true);
  try {
    let since = performance.now();
    for (const [index, uri] of uris.entries()) {
      const snapshot = snapshotOf(uri);
      if (snapshot) found.push(snapshot);
      if (performance.now() - since < SLICE) continue;
      progress?.report(Math.floor((index * 100) / uris.length));
      await turn();
      if (token.isCancellationRequested) throw new ResponseError(LSPErrorCodes.RequestCancelled, 'Cancelled.');
      since = performance.now();
    }
  } finally {
    progress?.done();
  }
  return found;
}
