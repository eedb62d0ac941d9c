/** The fonts that are printed with: beside the bundle, or in their package when run from the source. */
import { existsSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { basename, join } from 'node:path';
import type { FontFiles } from '../print/pdf.ts';

const PACKAGE = '@expo-google-fonts/source-sans-3';

/** Source Sans 3, under the SIL Open Font License. */
const FILES = {
  regular: '400Regular/SourceSans3_400Regular.ttf',
  bold: '600SemiBold/SourceSans3_600SemiBold.ttf',
  italic: '400Regular_Italic/SourceSans3_400Regular_Italic.ttf',
} as const;

let known: FontFiles | undefined;

/** Read once. Throws what node:fs throws when a file is not there. */
export function fontFiles(): FontFiles {
  return (known ??= { regular: fontFile(FILES.regular), bold: fontFile(FILES.bold), italic: fontFile(FILES.italic) });
}

function fontFile(path: string): Uint8Array {
  const beside = join(import.meta.dirname, 'fonts', basename(path));
  return readFileSync(existsSync(beside) ? beside : createRequire(join(import.meta.dirname, 'fonts.ts')).resolve(`${PACKAGE}/${path}`));
}
