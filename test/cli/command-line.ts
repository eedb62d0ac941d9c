/** Runs the command line in this process, in a folder of its own. */
import { run } from '../../server/src/cli/run.ts';
import { temporaryFolder, type Folder } from '../disk/folder.ts';

export interface Outcome {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

export interface Bench extends Folder {
  /** `scant` with these words; `look` is how the output is read (a pipe unless given). */
  scant(argv: readonly string[], look?: Look): Promise<Outcome>;
}

export interface Look {
  readonly terminal?: true;
  readonly colour?: true;
  /** The working folder, in the bench's. */
  readonly folder?: string;
  readonly stop?: AbortSignal;
  readonly onOutput?: (text: string) => void;
}

export function bench(files: Readonly<Record<string, string>> = {}): Bench {
  const folder = temporaryFolder(files);
  return {
    ...folder,
    async scant(argv, look = {}) {
      const texts = { out: '', err: '' };
      const write = (stream: 'out' | 'err') => (text: string): void => {
        texts[stream] += text;
        look.onOutput?.(text);
      };
      const code = await run(argv, {
        folder: look.folder === undefined ? folder.path : folder.at(look.folder),
        out: write('out'),
        err: write('err'),
        terminal: look.terminal ?? false,
        colour: look.colour ?? false,
        stop: () => look.stop ?? AbortSignal.abort(),
      });
      return { code, ...texts };
    },
  };
}

/** Fine in itself, in canonical layout. */
export const GOOD = `pattern "Harbour Mail" {
  units inches
  seam  1/4"
}

fabric ink   #22345c "Night ferry print"
fabric sand  #eadfc8 "Dry sand solid"

block Star 6" {
  sand       sand/ink   sand
  sand\\ink   ink        ink\\sand
  sand       ink/sand   sand
}

quilt {
  straight 2 by 3
  place { Star }
  border 2" ink
  backing sand
  binding cut 2 1/4" ink
}
`;

/** An unknown name in line 11, column 14: one error. */
export const BAD = GOOD.replace('   ink        ink', '   inc        ink');

/** Line 8 names a fabric that nothing uses. */
export const WARNED = GOOD.replace('\nblock', 'fabric extra #ff0000 "Extra"\n\nblock');

export const SIZES = `${GOOD}
size crib 2 by 2
size twin 3 by 4

colorway dusk {
  ink #553366 "Dusk"
}
`;
