/** Prints dealt in turn to units of which some are neighbours: whole numbers only, no chance in it. */
import type { Pair } from './neighbours.ts';

/** Exchanges that are looked at before what is left of alike neighbours is left: mending is then a second of work, not a minute. */
const MOST_EXCHANGES = 2_000_000;

/**
 * The number of the print of each unit, counted from 0. Of each print there are as many, but for one more of the first ones. Each unit
 * in turn gets the print that is left most often and that no neighbour has; neighbours that are alike all the same change with
 * units elsewhere, as long as that helps.
 */
export function dealtInTurn(units: number, prints: number, pairs: readonly Pair[]): number[] {
  const beside = besides(units, pairs);
  const dealt = inTurn(units, prints, beside);
  if (prints > 1) mend(dealt, beside);
  return dealt;
}

type Beside = readonly (readonly number[])[];

function besides(units: number, pairs: readonly Pair[]): Beside {
  const beside = Array.from({ length: units }, () => new Set<number>());
  for (const [a, b] of pairs) {
    beside[a]?.add(b);
    beside[b]?.add(a);
  }
  return beside.map((each) => [...each]);
}

function inTurn(units: number, prints: number, beside: Beside): number[] {
  const left = Array.from({ length: prints }, (_, print) => countOf(units, prints, print));
  const dealt: number[] = [];
  for (let unit = 0, next = 0; unit < units; unit += 1) {
    const taken = new Set((beside[unit] ?? []).map((other) => dealt[other]));
    const print = mostLeft(left, next, (each) => !taken.has(each)) ?? mostLeft(left, next, () => true) ?? 0;
    dealt.push(print);
    left[print] = (left[print] ?? 0) - 1;
    next = (print + 1) % prints;
  }
  return dealt;
}

function countOf(units: number, prints: number, print: number): number {
  const over = units % prints;
  return (units - over) / prints + (print < over ? 1 : 0);
}

/** Of those that may be, and of which some are left; the next in turn among equals. */
function mostLeft(left: readonly number[], next: number, may: (print: number) => boolean): number | undefined {
  let best: number | undefined;
  for (let step = 0; step < left.length; step += 1) {
    const print = (next + step) % left.length;
    if ((left[print] ?? 0) > (best === undefined ? 0 : (left[best] ?? 0)) && may(print)) best = print;
  }
  return best;
}

/** Changes prints between units while fewer neighbours are alike after it. */
function mend(dealt: number[], beside: Beside): void {
  let tries = MOST_EXCHANGES;
  for (let isBetter = true; isBetter;) {
    isBetter = false;
    for (let unit = 0; unit < dealt.length; unit += 1) {
      if (alike(dealt, beside, unit) === 0) continue;
      for (let step = 1; step < dealt.length && tries > 0; step += 1) {
        tries -= 1;
        if (!exchange(dealt, beside, unit, (unit + step) % dealt.length)) continue;
        isBetter = true;
        break;
      }
    }
    if (tries <= 0) return;
  }
}

function exchange(dealt: number[], beside: Beside, a: number, b: number): boolean {
  const [printA, printB] = [dealt[a] ?? 0, dealt[b] ?? 0];
  if (printA === printB) return false;
  const before = alike(dealt, beside, a) + alike(dealt, beside, b);
  dealt[a] = printB;
  dealt[b] = printA;
  if (alike(dealt, beside, a) + alike(dealt, beside, b) < before) return true;
  dealt[a] = printA;
  dealt[b] = printB;
  return false;
}

function alike(dealt: readonly number[], beside: Beside, unit: number): number {
  return (beside[unit] ?? []).filter((other) => dealt[other] === dealt[unit]).length;
}
