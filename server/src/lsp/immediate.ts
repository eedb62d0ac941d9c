/** `setImmediate` for a web worker, where there is none: after the messages that wait, without a timer's delay. */

const waiting = new Map<number, () => void>();
const channel = new MessageChannel();
let last = 0;

Object.assign(channel.port1, {
  onmessage: () => {
    const [first] = waiting;
    if (!first) return;
    waiting.delete(first[0]);
    first[1]();
  },
});

function later(work: (...given: unknown[]) => void, ...given: unknown[]): number {
  last += 1;
  waiting.set(last, () => work(...given));
  channel.port2.postMessage(null);
  return last;
}

/** A turn that was called off finds the next one waiting. */
function callOff(id: number): void {
  waiting.delete(id);
}

Object.assign(globalThis, { setImmediate: later, clearImmediate: callOff });
