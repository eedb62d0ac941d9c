/** What the line at the foot of the window says. */
import type { Headline } from '../../server/src/lsp/requests.ts';

export interface Status {
  readonly text: string;
  readonly tooltip: string;
  readonly command: string;
}

/** Undefined where there is nothing to say: a library of blocks without errors. */
export function statusFor({ figures, errors }: Headline): Status | undefined {
  if (errors > 0) return { text: `$(error) ${errors} ${errors === 1 ? 'error' : 'errors'}`, tooltip: 'The pattern has errors: show the problems', command: 'workbench.actions.view.problems' };
  if (figures === null) return undefined;
  return { text: figures, tooltip: 'Finished size, patches, cloth to buy: show the preview', command: 'scant.openPreview' };
}
