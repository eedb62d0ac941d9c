/**
 * One writer of a folder at a time, across processes: a file in the system's folder for temporary ones, named after the folder
 * and holding the writer's number. One that a dead process left behind is taken over; where none can be made, nothing is locked.
 */
import { createHash } from 'node:crypto';
import { linkSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { codeOf } from './failures.ts';
import { real } from './sources.ts';

export interface Busy {
  readonly kind: 'busy';
  /** The number of the process that writes there. */
  readonly process: number;
}

/** Does the work alone, or answers that another process writes there and does not end. */
export function alone<T>(folder: string, work: () => T): T | Busy {
  const lock = lockOf(folder);
  for (let tries = 0; ; tries++) {
    const owner = taken(lock);
    if (owner === 'unlockable') return work();
    if (owner === process.pid) return released(lock, work);
    if (tries >= TRIES) return { kind: 'busy', process: owner };
    sleep();
  }
}

export function lockOf(folder: string): string {
  return join(tmpdir(), `scant-${createHash('sha256').update(real(folder)).digest('hex').slice(0, 24)}.lock`);
}

/** A build writes for some milliseconds: a second of waiting is plenty. */
const TRIES = 50;
const PAUSE = 20;

/** Whose it is now. The number is in the file before the file has its name: nobody sees a lock without an owner. */
function taken(lock: string): number | 'unlockable' {
  const own = `${lock}.${process.pid}`;
  try {
    writeFileSync(own, `${process.pid}`, { mode: 0o600 });
    linkSync(own, lock);
    return process.pid;
  } catch (error) {
    if (codeOf(error) !== 'EEXIST') return 'unlockable';
    const owner = ownerOf(lock);
    return owner === undefined || isAlive(owner) ? (owner ?? 0) : takenOver(lock, own);
  } finally {
    rmSync(own, { force: true });
  }
}

/** Of several that take it over the last one has it; each looks again after a pause. */
function takenOver(lock: string, own: string): number {
  renameSync(own, lock);
  sleep();
  return ownerOf(lock) ?? 0;
}

function released<T>(lock: string, work: () => T): T {
  try {
    return work();
  } finally {
    rmSync(lock, { force: true });
  }
}

/** Undefined when it has just gone. */
function ownerOf(lock: string): number | undefined {
  try {
    return Number(readFileSync(lock, 'utf8'));
  } catch {
    return undefined;
  }
}

function isAlive(pid: number): boolean {
  if (!Number.isSafeInteger(pid) || pid <= 0) return false;
  try {
    return process.kill(pid, 0);
  } catch (error) {
    return codeOf(error) === 'EPERM';
  }
}

/** The work is done without turning to anything else, and so is the waiting. */
function sleep(): void {
  Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, PAUSE);
}
