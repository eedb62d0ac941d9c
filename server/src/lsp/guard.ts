/**
 * Around every handler: nothing is answered before the first message or after the last, an error is logged and answered
 * with nothing, and what was cancelled or overtaken is not worked out.
 */
import { ErrorCodes, LSPErrorCodes, ResponseError, type CancellationToken, type WorkDoneProgressReporter } from 'vscode-languageserver';

export interface Guard {
  /** A handler that answers `otherwise` when it fails. */
  readonly request: <P, R>(name: string, otherwise: R, handler: Answer<P, R>) => Handler<P, R>;
  /** The same for a question about places in a text: once the text is another, the places mean nothing. */
  readonly placed: <P, R>(name: string, otherwise: R, handler: Answer<P, R>) => Handler<P, R>;
  /** What a notification is heard with; whatever the handler returns is dropped. */
  readonly event: <P>(name: string, handler: (params: P) => unknown) => (params: P) => void;
  /** Why a request cannot be answered in the present state; undefined when it can. */
  readonly refusal: () => ResponseError<never> | undefined;
}

/** Works an answer out, or refuses by throwing a `ResponseError`. */
export type Answer<P, R> = (params: P, token: CancellationToken, progress?: WorkDoneProgressReporter) => R | Promise<R>;

export type Handler<P, R> = (params: P, token: CancellationToken, progress?: WorkDoneProgressReporter) => Promise<R | ResponseError<never>>;

type Asked<P> = readonly [params: P, token: CancellationToken, progress: WorkDoneProgressReporter | undefined];

export interface GuardOptions {
  readonly log: (message: string) => void;
  readonly state: () => 'starting' | 'running' | 'down';
  /** The version of the text that a question is about. */
  readonly versionOf: (params: unknown) => number | undefined;
  /** From the editor's columns, and back into them: an answer's places are those of its question's text unless it says otherwise. */
  readonly decode: <P>(params: P) => P;
  readonly encode: <R>(result: R, params: unknown) => R;
}

export function guardWith({ log, state, versionOf, decode, encode }: GuardOptions): Guard {
  const failed = (name: string, error: unknown): void => log(`${name}: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`);
  const refusal: Guard['refusal'] = () => {
    if (state() === 'starting') return new ResponseError(ErrorCodes.ServerNotInitialized, 'The first request is initialize.');
    return state() === 'down' ? new ResponseError(ErrorCodes.InvalidRequest, 'The server has been shut down.') : undefined;
  };
  const run = async <P, R>(name: string, otherwise: R, handler: Answer<P, R>, [params, token, progress]: Asked<P>): Promise<R | ResponseError<never>> => {
    const refused = refusal();
    if (refused) return refused;
    // A client that sends its parameters as a list has its own last one here.
    if (token?.isCancellationRequested) return new ResponseError(LSPErrorCodes.RequestCancelled, 'Cancelled.');
    try {
      return encode(await handler(decode(params), token, progress), params);
    } catch (error) {
      if (error instanceof ResponseError) return error as ResponseError<never>;
      failed(name, error);
      return otherwise;
    }
  };
  const request: Guard['request'] = (name, otherwise, handler) => async (params, token, progress) => {
    await turn();
    return run(name, otherwise, handler, [params, token, progress]);
  };
  const placed: Guard['placed'] = (name, otherwise, handler) => async (params, token, progress) => {
    const asked = versionOf(params);
    await turn();
    if (versionOf(params) !== asked) return overtaken();
    const answer = await run(name, otherwise, handler, [params, token, progress]);
    return versionOf(params) === asked ? answer : overtaken();
  };
  const event: Guard['event'] = (name, handler) => (params) => {
    if (state() !== 'running') return;
    try {
      handler(params);
    } catch (error) {
      failed(name, error);
    }
  };
  return { request, placed, event, refusal };
}

function overtaken(): ResponseError<never> {
  return new ResponseError(LSPErrorCodes.ContentModified, 'The text is another by now.');
}

/** Lets a message that has come in meanwhile be read first: a cancellation, the next keystroke. */
export async function turn(): Promise<void> {
  // The connection reads its next message in the event loop's turn after this one; what waits for one turn comes before it.
  for (let turns = 0; turns < 2; turns++) await new Promise((resolve) => setImmediate(resolve));
}
