/** What is kept to tell of a text only what changed: enough for the texts under the hand, and no more however many are opened. */
import { expect, test } from 'vitest';
import { recoderFor } from '../../server/src/lsp/encoding.ts';
import { tokenStore } from '../../server/src/lsp/tokens.ts';
import { snapshotOf, type Snapshot } from '../../server/src/snapshot.ts';
import { documentOf } from '../../server/src/text/document.ts';
import { hostOf } from '../harness/snapshot.ts';

const snapshot = (name: string): Snapshot => snapshotOf(documentOf(name, 'fabric ink #22345c "Night"\nblock A 6" { ink }\n'), 1, hostOf());

test('of the texts asked about last only changes are told, of one long away the whole', () => {
  const store = tokenStore(() => recoderFor('utf-16'));
  const { resultId = '' } = store.whole(snapshot('first'));
  const again = store.since(snapshot('first'), resultId);
  expect(again).toMatchObject({ edits: [] });
  for (let other = 0; other < 31; other++) store.whole(snapshot(`other ${other}`));
  const near = store.since(snapshot('first'), again.resultId ?? '');
  expect(near).toMatchObject({ edits: [] });
  for (let other = 0; other < 32; other++) store.whole(snapshot(`another ${other}`));
  expect(store.since(snapshot('first'), near.resultId ?? '')).toHaveProperty('data');
});
