// The demo: checks and builds one sample with the command line, then says what came out and where it is.
import { spawnSync } from 'node:child_process';
import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const project = fileURLToPath(new URL('..', import.meta.url));
const sample = join('samples', 'harbour-mail.quilt');
const out = join('samples', 'out', 'harbour-mail');

/** Runs `scant` as a maker would; the demo ends with its exit code when it fails. */
function scant(...words) {
  console.log(`\n> scant ${words.join(' ')}`);
  const { status } = spawnSync(process.execPath, [join('dist', 'scant.cjs'), ...words], { cwd: project, stdio: 'inherit' });
  if (status !== 0) process.exit(status ?? 1);
}

/** One line a fact, for each size of the pattern. */
function summary({ title, sizes }) {
  return sizes.flatMap((size) => {
    const patches = size.pieces.filter((piece) => piece.for !== 'binding').reduce((total, piece) => total + piece.pieces, 0);
    const buy = size.fabrics.map(({ name, buy }) => `${name} ${buy.text}`).join(', ');
    const name = size.name === null ? title : `${title}, ${size.name}`;
    return [
      `${name}: ${size.width.text} by ${size.height.text}`,
      `  ${patches} patches; blocks: ${size.blocks.map((block) => `${block.count} ${block.name}`).join(', ')}`,
      `  fabric to buy: ${buy}`,
      `  backing ${size.backing.buy.text}, batting ${size.batting.width.text} by ${size.batting.height.text}`,
    ];
  });
}

/** Every file below a folder. */
function filesIn(folder) {
  return readdirSync(join(project, folder), { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile());
}

scant('check', sample);
scant('build', sample);
console.log(`\n${summary(JSON.parse(readFileSync(join(project, out, 'pattern.json'), 'utf8'))).join('\n')}`);
console.log(`\n${filesIn(out).length} files are in ${out}: previews (quilt.svg, blocks), cut lists (cutting.md, cutting.csv), sewing steps (steps.md with drawings), the printed pattern (booklet.pdf, booklet.html), numbers (pattern.json, pattern.xlsx).`);
console.log('\nTo see it live in the editor:  npm run editor   (opens the samples in a browser; needs no other install)');
