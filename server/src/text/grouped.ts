/** Items by what they have in common. `Map.groupBy` is younger than the oldest Node that this runs in (20). */

/** Groups in the order of their first items, the items in their own. */
export function groupedBy<T, K>(items: Iterable<T>, keyOf: (item: T) => K): Map<K, T[]> {
  const groups = new Map<K, T[]>();
  for (const item of items) {
    const key = keyOf(item);
    const group = groups.get(key);
    if (group) group.push(item);
    else groups.set(key, [item]);
  }
  return groups;
}
