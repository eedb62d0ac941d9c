/** What the handbook tells people to copy: the fenced blocks of its pages. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { project } from './fresh.ts';

/** The first block of a language under a heading of a page. Throws when there is none. */
export function handbookBlock(page: string, heading: string, language: string): string {
  const text = readFileSync(join(project, 'samples/handbook', page), 'utf8');
  const section = text.split(/^## /m).find((each) => each.startsWith(`${heading}\n`)) ?? '';
  const block = new RegExp(`^\`\`\`${language}\\n([\\s\\S]*?)^\`\`\``, 'm').exec(section)?.[1];
  if (block === undefined) throw new Error(`${page}: no ${language} under ${heading}`);
  return block;
}
