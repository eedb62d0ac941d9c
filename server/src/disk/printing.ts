/** The way to what prints. In the bundles this file is replaced (`esbuild.config.mjs`): there it loads `print.cjs` when first called. */
import * as print from '../print/main.ts';

export function printing(): typeof print {
  return print;
}
