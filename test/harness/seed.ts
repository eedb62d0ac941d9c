/** Random tests try the same cases each time; `FC_SEED=7` tries others. */
import fc from 'fast-check';

fc.configureGlobal({ seed: Number(process.env.FC_SEED ?? 20261125) });
