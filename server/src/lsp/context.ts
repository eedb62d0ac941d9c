/** What everything that answers requests is given. */
import type { Snapshot } from '../snapshot.ts';
import type { Client } from './client.ts';
import type { Guard } from './guard.ts';
import type { Services } from './services.ts';

export interface AnswerContext {
  readonly guard: Guard;
  readonly services: Services;
  /** The newest snapshot of a file; undefined when there is no such file. */
  readonly snapshotOf: (uri: string) => Snapshot | undefined;
  /** Undefined before the first message. */
  readonly client: () => Client | undefined;
}
