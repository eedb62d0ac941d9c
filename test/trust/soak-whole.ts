// Two hours of typing (five keys a second) in ten minutes: `npm run soak`. Prints what the server holds as it goes, and ends with 1 when a promise is broken.
import { soak } from './soak.ts';

const TWO_HOURS = 36_000;
const minutes = Number(process.argv[2] ?? 10);
const keystrokes = Math.round((TWO_HOURS * minutes) / 10);

console.log(`${keystrokes} keystrokes in ${minutes} minutes\n\nkeystrokes   heap after collecting   handles   open files`);
const { growth, handleGrowth, faults, ...figures } = await soak({
  keystrokes,
  perSecond: TWO_HOURS / 600,
  marks: 15,
  onMark: ({ heap, handles, files }, done) => console.log(`${String(done).padStart(10)}${`${(heap / 2 ** 20).toFixed(1)} MiB`.padStart(24)}${String(handles).padStart(10)}${String(files).padStart(13)}`),
});
const rows: readonly (readonly [string, string])[] = [
  ['seconds', figures.seconds.toFixed(0)],
  ['answers', `${figures.answers}`],
  ['from a key to its problems', `median ${figures.median.toFixed(1)} ms, worst ${figures.worst.toFixed(0)} ms`],
  ['answers of an older text', `${figures.stale}`],
  ['texts with other problems than opened anew', `${figures.wrong}`],
  ['questions called off', `${figures.calledOff} of ${figures.called} stopped`],
  ['heap after warming up, largest over smallest', growth.toFixed(3)],
  ['handles at the end, times those before', handleGrowth.toFixed(3)],
  ['faults in messages', `${faults.length}`],
];
console.log(`\n${rows.map(([what, value]) => `${what.padEnd(46)}${value}`).join('\n')}`);
for (const fault of faults.slice(0, 5)) console.log(fault);
const isKept = growth <= 1.1 && handleGrowth <= 1 && figures.stale + figures.wrong + faults.length === 0 && figures.calledOff === figures.called;
process.exitCode = isKept ? 0 : 1;
