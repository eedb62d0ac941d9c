/** What everything that answers requests is given. */
import type { Snapshot } from '../snapshot.ts';
import type { Client, Settings } from './client.ts';
import type { Recoder } from './encoding.ts';
import type { Guard } from './guard.ts';
import type { Services } from './services.ts';

export interface AnswerContext {
  readonly guard: Guard;
  readonly services: Services;
  /** The newest snapshot of a file; undefined when there is no such file. */
  readonly snapshotOf: (uri: string) => Snapshot | undefined;
  /** Every pattern of the workspace and every open text, each once. */
  readonly filesOf: () => readonly string[];
  /** The workspace's folders, as URIs. */
  readonly folders: () => readonly string[];
  readonly isOpen: (uri: string) => boolean;
  /** Undefined before the first message. */
  readonly client: () => Client | undefined;
  readonly settings: () => Settings;
  readonly recoder: () => Recoder;
}
