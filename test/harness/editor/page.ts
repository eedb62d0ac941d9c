// What a user does and sees in the editor's page: keys, mouse, text, web views. Used by the bridge and for the pictures.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { isAbsolute, join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { runInThisContext } from 'node:vm';
import type { Locator, Page } from 'playwright-core';
import { project } from './serve.ts';

/** One thing done or looked at, as the tests send it over the bridge. */
export type Action = PageAction | ElementAction;

export type PageAction =
  | { do: 'press'; keys: string }
  | { do: 'type'; text: string }
  | { do: 'hoverText' | 'clickText'; text: string }
  | { do: 'screenshot'; path: string }
  | { do: 'print'; text: string }
  | { do: 'evaluate'; script: string };

/** A CSS selector (or any of Playwright's) in the editor's own page or in a web view. */
export interface Target {
  readonly place: 'editor' | 'webview';
  readonly selector: string;
}

export type ElementAction = Target &
  ({ do: 'click' | 'hover' | 'text' | 'count' | 'audit' } | { do: 'attribute'; name: string } | { do: 'apply'; script: string });

const patience = { timeout: 10_000 };

/** Does it and gives what was seen, if anything. Waits 10 seconds for what is not there yet. */
export function act(page: Page, action: Action): Promise<unknown> {
  return 'selector' in action ? actOnElement(page, action) : actOnPage(page, action);
}

async function actOnPage(page: Page, action: PageAction): Promise<unknown> {
  switch (action.do) {
    case 'press':
      return page.keyboard.press(action.keys);
    case 'type':
      return page.keyboard.type(action.text, { delay: 5 });
    case 'hoverText':
      return moveToText(page, action.text);
    case 'clickText':
      await moveToText(page, action.text);
      await page.mouse.down();
      return page.mouse.up();
    case 'screenshot':
      await page.screenshot({ path: isAbsolute(action.path) ? action.path : join(project, action.path) });
      return undefined;
    case 'print':
      return console.log(action.text);
    case 'evaluate':
      return page.evaluate(action.script);
  }
}

async function actOnElement(page: Page, action: ElementAction): Promise<unknown> {
  if (action.do === 'count') return (await matches(page, action)).length;
  const element = await find(page, action);
  switch (action.do) {
    case 'click':
      return element.click(patience);
    case 'hover':
      return element.hover(patience);
    case 'text':
      return element.innerText(patience);
    case 'attribute':
      return element.getAttribute(action.name, patience);
    case 'audit':
      return audit(element);
    case 'apply':
      return element.evaluate(runInThisContext(action.script) as () => unknown, undefined, patience);
  }
}

/** What axe-core finds wrong with the page that the element is in: `rule: why (where)`. */
async function audit(element: Locator): Promise<readonly string[]> {
  const source = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
  const script = `(element) => { ${source}; return window.axe.run(document).then(({ violations }) => violations.flatMap(({ id, help, nodes }) => nodes.map(({ target }) => id + ': ' + help + ' (' + target.join(' ') + ')'))); }`;
  return element.evaluate(runInThisContext(script) as () => Promise<string[]>, undefined, { timeout: 30_000 });
}

/** Moves the mouse there in steps, as a hand does: the editor's hovers want movement. */
async function moveToText(page: Page, text: string): Promise<void> {
  const place = await eventually(`the text ‘${text}’ in an editor`, () =>
    page.evaluate<{ x: number; y: number } | null>(`findCodeText(${JSON.stringify(text)})`),
  );
  await page.mouse.move(place.x, place.y, { steps: 5 });
}

function find(page: Page, target: Target): Promise<Locator> {
  return eventually(`${target.selector} in the ${target.place}`, async () => (await matches(page, target))[0]);
}

/** A web view is two frames deep: every frame but the page's own is looked through. */
async function matches(page: Page, { place, selector }: Target): Promise<Locator[]> {
  const frames = place === 'editor' ? [page.mainFrame()] : page.frames().filter((frame) => frame !== page.mainFrame());
  const found = await Promise.all(frames.map((frame) => frame.locator(selector).all().catch(() => [])));
  return found.flat();
}

/** Asks again until there is an answer. */
async function eventually<T>(what: string, ask: () => Promise<T | null | undefined>): Promise<T> {
  const end = Date.now() + patience.timeout;
  for (;;) {
    const answer = await ask();
    if (answer !== null && answer !== undefined) return answer;
    if (Date.now() > end) throw new Error(`The user never saw ${what}.`);
    await setTimeout(50);
  }
}
