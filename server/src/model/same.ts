/** Keeping the objects of the version before where nothing changed, so that what was made from them still holds. */
import { Exact, equals } from '../exact/number.ts';

/**
 * Whether two values say the same. Lines, statements and other values of a class are the same only when they are one
 * object (exact numbers: when they are equal).
 */
export function isSame(a: unknown, b: unknown): boolean {
  if (a === b) return true;
  if (a instanceof Exact && b instanceof Exact) return equals(a, b);
  if (Array.isArray(a) && Array.isArray(b)) return a.length === b.length && a.every((each, index) => isSame(each, b[index]));
  if (a instanceof Map && b instanceof Map) return isSame([...a], [...b]);
  if (a instanceof Set && b instanceof Set) return isSame([...a], [...b]);
  if (!isPlain(a) || !isPlain(b)) return false;
  const keys = Object.keys(a);
  return keys.length === Object.keys(b).length && keys.every((key) => Object.hasOwn(b, key) && isSame(a[key], b[key]));
}

/** The older of two values when they say the same. */
export function kept<T>(older: T | undefined, fresh: T): T {
  return older !== undefined && isSame(older, fresh) ? older : fresh;
}

/** The fresh map, with the older value wherever one says the same; the older map when all do. */
export function keptMap<V>(older: ReadonlyMap<string, V> | undefined, fresh: ReadonlyMap<string, V>): ReadonlyMap<string, V> {
  if (!older) return fresh;
  const merged = new Map([...fresh].map(([name, value]) => [name, kept(older.get(name), value)]));
  const isAll = older.size === merged.size && [...merged].every(([name, value]) => older.get(name) === value);
  return isAll && isSame([...older.keys()], [...merged.keys()]) ? older : merged;
}

/** An object of fields only, that is neither a line (known by its line end) nor a statement (by its node). */
function isPlain(value: unknown): value is Readonly<Record<string, unknown>> {
  if (typeof value !== 'object' || value === null || 'eol' in value || 'node' in value) return false;
  const prototype: unknown = Object.getPrototypeOf(value);
  return prototype === Object.prototype || prototype === null;
}
