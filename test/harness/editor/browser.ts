// A headless Chromium for the served editor: SCANT_BROWSER, the one install.mjs unpacked, or the system's, with the same fonts for all.
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { chromium, type Page } from 'playwright-core';
import { atEnd } from './cleanup.ts';
import { editorHome } from './serve.ts';

/** An empty page of the size; the browser stops when the program ends. */
export async function openPage(size: { width: number; height: number }): Promise<Page> {
  const packed = join(editorHome, 'browser');
  const executablePath = executable(packed);
  const libraries = executablePath.startsWith(packed) ? { LD_LIBRARY_PATH: join(packed, 'al2023/lib') } : {};
  const browser = await chromium.launch({
    executablePath,
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
    ],
    env: { ...process.env, FONTCONFIG_FILE: join(editorHome, 'fonts.conf'), ...libraries },
    handleSIGINT: false,
    handleSIGTERM: false,
    handleSIGHUP: false,
  });
  atEnd(() => browser.close());
  const page = await browser.newPage({ viewport: size });
  await page.addInitScript({ path: join(import.meta.dirname, 'in-page.mjs') });
  return page;
}

function executable(packed: string): string {
  const choices = [process.env.SCANT_BROWSER, join(packed, 'chromium'), '/usr/bin/chromium'];
  const found = choices.find((path) => path !== undefined && existsSync(path));
  if (found === undefined) throw new Error('No Chromium: set SCANT_BROWSER to the path of a Chrome or Chromium.');
  return found;
}
