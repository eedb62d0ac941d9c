// The user of a test: real keys, mouse and eyes, outside the editor that the test runs in. Everything waits up to 10 seconds for what it needs.
import type { Answer } from '../harness/editor/bridge.ts';
import type { Action, Target } from '../harness/editor/page.ts';

const bridge = process.env.SCANT_USER;

/** False in a desktop editor started without our harness: then only the extension API can be tested. */
export const hasUser = bridge !== undefined;

/** Presses keys together, named as in Playwright: `Control+Shift+P`, `Enter`, `a`. */
export const press = (keys: string): Promise<void> => send({ do: 'press', keys });

/** Types text key by key. */
export const type = (text: string): Promise<void> => send({ do: 'type', text });

/** Moves the mouse over the first visible occurrence of the text in an editor line. */
export const hoverText = (text: string): Promise<void> => send({ do: 'hoverText', text });

/** Clicks the first visible occurrence of the text in an editor line. */
export const clickText = (text: string): Promise<void> => send({ do: 'clickText', text });

/** A PNG of the whole window; the path is absolute or from the project's folder. */
export const screenshot = (path: string): Promise<void> => send({ do: 'screenshot', path });

/** The value of a JavaScript expression in the editor's own page. */
export const evaluate = <T>(script: string): Promise<T> => send({ do: 'evaluate', script });

/** Prints a line of the test's report. */
export async function print(text: string): Promise<void> {
  if (hasUser) return send({ do: 'print', text });
  console.log(text);
}

/** The first element of a selector (CSS or Playwright's); `count` is of all, at once. */
export interface Element {
  click: () => Promise<void>;
  hover: () => Promise<void>;
  text: () => Promise<string>;
  attribute: (name: string) => Promise<string | null>;
  count: () => Promise<number>;
  /** What axe-core finds wrong with the page it is in. */
  audit: () => Promise<readonly string[]>;
  /** The value of a function of the element, given as source: `(element) => element.value`. */
  apply: <T>(script: string) => Promise<T>;
}

/** In the editor's own page: `.squiggly-error`, `.monaco-hover`, `.suggest-widget`… */
export const element = (selector: string): Element => elementOf({ place: 'editor', selector });

/** In any of the web views. */
export const webview = (selector: string): Element => elementOf({ place: 'webview', selector });

function elementOf(target: Target): Element {
  return {
    click: () => send({ do: 'click', ...target }),
    hover: () => send({ do: 'hover', ...target }),
    text: () => send({ do: 'text', ...target }),
    attribute: (name) => send({ do: 'attribute', name, ...target }),
    count: () => send({ do: 'count', ...target }),
    audit: () => send({ do: 'audit', ...target }),
    apply: (script) => send({ do: 'apply', script, ...target }),
  };
}

async function send<T>(action: Action): Promise<T> {
  if (bridge === undefined) throw new Error('This test needs the harness of `npm run test:editor`.');
  const response = await fetch(bridge, { method: 'POST', body: JSON.stringify(action) });
  const answer = (await response.json()) as Answer;
  if ('error' in answer) throw new Error(`${action.do}: ${answer.error}`);
  return answer.seen as T;
}
