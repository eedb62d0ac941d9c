/** What one preview has chosen for each file that it has shown: a size, a colourway, a block, a step. */
import { newFile, type FileState } from './preview/messages.ts';

export type Chosen = Pick<FileState, 'size' | 'colorway' | 'block' | 'step'>;

export interface Choices {
  readonly choice: (uri: string) => Chosen;
  readonly choose: (uri: string, part: Partial<Chosen>) => void;
}

export function choicesFrom(files: readonly FileState[]): Choices {
  const known = new Map<string, Chosen>(files.map((file) => [file.uri, file]));
  const choice = (uri: string): Chosen => {
    const { size, colorway, block, step } = known.get(uri) ?? newFile(uri);
    return { size, colorway, block, step };
  };
  return { choice, choose: (uri, part) => void known.set(uri, { ...choice(uri), ...part }) };
}
