/** Whose work is bundled: the packages that the bundles were made from, with their licences, as a page that is shipped. */
import { existsSync, readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';

interface Package {
  readonly name: string;
  readonly version: string;
  readonly licence: string;
  readonly text: string;
}

/** Not read by the bundler, but copied. */
const COPIED = ['node_modules/@expo-google-fonts/source-sans-3'];

/** The page for a list of bundled files, paths from the project's folder. */
export function licencesPage(project: string, inputs: readonly string[]): string {
  const folders = [...new Set([...inputs.flatMap(packageFolder), ...COPIED])].sort();
  const packages = folders.map((folder) => packageIn(join(project, folder)));
  const rows = packages.map(({ name, version, licence }) => `| ${name} | ${version} | ${licence} |`);
  const texts = packages.map(({ name, version, text }) => `## ${name} ${version}\n\n${fenced(text)}`);
  return `# Licences of what is bundled\n\nScant is made with the work of others. These packages are in its bundles; their licences follow.\n\n| package | version | licence |\n| --- | --- | --- |\n${rows.join('\n')}\n\n${texts.join('\n\n')}\n`;
}

/** `node_modules/a/node_modules/@b/c` of `node_modules/a/node_modules/@b/c/lib/d.js`; nothing for a file of the project's own. */
function packageFolder(path: string): readonly string[] {
  const found = /^(?:.*\/)?node_modules\/(?:@[^/]+\/)?[^/]+/.exec(path)?.[0];
  return found === undefined ? [] : [found];
}

function packageIn(folder: string): Package {
  const { name, version, license } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8')) as { name: string; version: string; license?: string };
  const file = readdirSync(folder).filter((each) => /^(licen[cs]e|copying)/i.test(each)).sort()[0];
  const text = file !== undefined && existsSync(join(folder, file)) ? readFileSync(join(folder, file), 'utf8') : '';
  return { name, version, licence: license ?? 'see its text', text: text.replaceAll('\r\n', '\n').replace(/[ \t]+$/gm, '').trim() };
}

function fenced(text: string): string {
  return text === '' ? 'The package holds no text of its licence; the name above is what its author gives.' : `\`\`\`\`text\n${text}\n\`\`\`\``;
}
