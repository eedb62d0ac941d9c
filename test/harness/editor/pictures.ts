// Takes the README's pictures in the real editor: `npm run pictures` for all, `npm run pictures -- hover` for some.
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import type { Page } from 'playwright-core';
import { openPage } from './browser.ts';
import { runProgram } from './cleanup.ts';
import { act } from './page.ts';
import { addressOf, copyOfSamples, project, remote, serveEditor, type Editor } from './serve.ts';

interface Picture {
  /** Written here, from the project's folder. */
  readonly to: string;
  /** The sample that is open, from the samples folder. */
  readonly sample: string;
  readonly size: { readonly width: number; readonly height: number };
  /** What the user does before the picture is taken. */
  readonly prepare: (page: Page) => Promise<void>;
}

const size = { width: 1360, height: 800 };

const pictures: readonly Picture[] = [
  {
    to: 'samples/pictures/editor.png',
    sample: 'harbour-mail.quilt',
    size,
    prepare: async (page) => {
      await showPreview(page);
      await act(page, { do: 'clickText', text: 'Mooring' });
      await setTimeout(1500);
    },
  },
  {
    to: 'samples/pictures/hover.png',
    sample: 'harbour-mail.quilt',
    size,
    prepare: async (page) => {
      await showPreview(page);
      await act(page, { do: 'hoverText', text: 'frame\\light' });
      await setTimeout(1500);
    },
  },
  {
    to: 'samples/pictures/settings.png',
    sample: 'lamp-room.quilt',
    size,
    prepare: (page) => showView(page, 'settings'),
  },
  {
    to: 'samples/pictures/mirrors.png',
    sample: 'beacon-star.quilt',
    size,
    prepare: (page) => showView(page, 'mirrors'),
  },
];

async function showView(page: Page, name: string): Promise<void> {
  await showPreview(page);
  await act(page, { do: 'apply', place: 'webview', selector: '#bar select', script: `(select) => { select.value = '${name}'; select.dispatchEvent(new Event('change')); }` });
  await setTimeout(1500);
}

/** The text on the left, the preview on the right, and nothing else. */
async function showPreview(page: Page): Promise<void> {
  await act(page, { do: 'press', keys: 'Control+B' });
  await act(page, { do: 'press', keys: 'Control+K' });
  await act(page, { do: 'press', keys: 'v' });
  await act(page, { do: 'text', place: 'webview', selector: '#tools' });
  await setTimeout(1500);
}

await runProgram(main);

async function main(): Promise<number> {
  const names = process.argv.slice(2);
  const chosen = pictures.filter(({ to }) => names.length === 0 || names.some((name) => to.includes(name)));
  const editor = await serveEditor({ extensions: [project] });
  for (const picture of chosen) await take(editor, picture);
  return chosen.length > 0 ? 0 : 1;
}

async function take(editor: Editor, picture: Picture): Promise<void> {
  const folder = copyOfSamples();
  const page = await openPage(picture.size);
  const opened = remote(editor, join(folder, picture.sample));
  await page.goto(addressOf(editor, folder, [['openFile', opened]]));
  await act(page, { do: 'clickText', text: 'about' });
  await picture.prepare(page);
  await act(page, { do: 'screenshot', path: picture.to });
  console.log(`Took ${picture.to}`);
  await page.close();
}
