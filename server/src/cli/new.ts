/** `scant new`: a small pattern to start from. */
import { writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { codeOf, reasonOf } from '../disk/failures.ts';
import { patternName } from '../disk/sources.ts';
import { complain } from './inputs.ts';
import { FAILED, FINE, UsageError, type Command } from './io.ts';
import { HELP_OPTION, parseOptions } from './options.ts';

export const fresh: Command = {
  name: 'new',
  summary: 'make a small pattern to start from',
  help: `scant new NAME

Makes NAME.quilt, a small pattern to start from. NAME may begin with a folder.
A file that is there already is left as it is (exit code 2).
`,
  run(argv, io) {
    const { positionals } = parseOptions(argv, HELP_OPTION);
    const [name, more] = positionals;
    if (name === undefined || more !== undefined) throw new UsageError('name one new pattern');
    const path = name.endsWith('.quilt') ? name : /[/\\]$/.test(name) ? join(name, 'pattern.quilt') : `${name}.quilt`;
    try {
      writeFileSync(resolve(io.folder, path), patternText(titleOf(path)), { flag: 'wx' });
    } catch (error) {
      complain(codeOf(error) === 'EEXIST' ? `${path} is there already` : `cannot write ${path}: ${reasonOf(error)}`, io);
      return FAILED;
    }
    io.out(`${path}\n`);
    return FINE;
  },
};

/** `harbour-mail.quilt` is "Harbour mail". */
function titleOf(path: string): string {
  const words = patternName(path).replace(/[-_\s\p{Cc}]+/gu, ' ').trim();
  return words === '' ? 'New pattern' : words.charAt(0).toUpperCase() + words.slice(1);
}

function patternText(title: string): string {
  return `pattern "${title.replace(/["\\]/g, '\\$&')}" {
  units inches
  seam  1/4"
}

fabric night  #22345c "Night blue"
fabric sand   #eadfc8 "Dry sand"

// Each cell is a patch. The character between two names is the seam, drawn the way it runs.
block Star 6" {
  sand         sand/night   sand
  sand\\night   night        night\\sand
  sand         night/sand   sand
}

quilt {
  straight 4 by 5
  place { Star }
  border 3" night
  backing sand
  binding cut 2 1/4" night
}
`;
}
