/** Computed values in `about` are helped with as those in `steps`: the same completions, the same hover. */
import { describe, expect, test } from 'vitest';
import { completionsAt } from '../../server/src/features/completion.ts';
import { hoverAt } from '../../server/src/features/hover.ts';
import { snapshotOfText } from '../harness/snapshot.ts';

const SEWN = 'fabric ink #112233\nfabric sea #aabbcc\nblock Mast 6" {\n  ink sea\n  sea ink\n}\nquilt {\n  straight 2 by 3\n  place { Mast }\n}\n';
const inAbout = (said: string): string => `pattern "Ferry" {\n  units inches\n  about ${said}\n}\n${SEWN}`;
const inSteps = (said: string): string => `pattern "Ferry" {\n  units inches\n}\n${SEWN}steps before Mast {\n  ${said}\n}\n`;

function behind(text: string, mark: string): { readonly line: number; readonly character: number } {
  const lines = text.slice(0, text.indexOf(mark) + mark.length).split('\n');
  return { line: lines.length - 1, character: lines.at(-1)?.length ?? 0 };
}

function offered(text: string): readonly string[] {
  return completionsAt(snapshotOfText(text), behind(text, '{Mast.')).items.map(({ text: item, detail }) => `${item} ${detail}`);
}

describe('values in about', () => {
  test.each(['"Needs {Mast.} blocks"', '"Needs {Mast.count} blocks"', '"""\n  Needs {Mast.} blocks\n  """'])('%s completes as in steps', (said) => {
    expect(offered(inAbout(said))).toContain('Mast.count 6');
    expect(offered(inAbout(said))).toEqual(offered(inSteps(said)));
  });

  test.each(['"Needs {Mast.count} blocks"', '"""\n  Needs {Mast.count} blocks\n  """'])('%s shows its value as in steps', (said) => {
    const [about, steps] = [inAbout(said), inSteps(said)].map((text) => hoverAt(snapshotOfText(text), behind(text, '{Mast.cou')));
    expect(about?.heading).toBe('Mast.count');
    expect(about?.facts).toEqual(steps?.facts);
    expect(JSON.stringify(about?.facts)).toContain('6');
  });

  test('outside of braces nothing of the kind is offered', () => {
    const text = inAbout('"Needs Mast. blocks"');
    const { items } = completionsAt(snapshotOfText(text), behind(text, 'Needs Mast.'));
    expect(items.map(({ kind }) => kind)).not.toContain('value');
  });
});
