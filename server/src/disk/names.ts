/** File names for what people have named: letters, digits, `-` and `_` only, distinct on every file system. */

/** One file name (no extension) for each name, in order. Names that would collide get `-2`, `-3` … in order of appearance. */
export function fileNames(names: readonly string[]): string[] {
  const taken = new Set<string>();
  return names.map((name) => {
    const plain = plainName(name);
    let candidate = plain;
    for (let number = 2; taken.has(collisionKey(candidate)); number++) candidate = `${plain}-${number}`;
    taken.add(collisionKey(candidate));
    return candidate;
  });
}

/** `Nine(rust)` is `Nine-rust`; a name that leaves nothing is `unnamed`. */
function plainName(name: string): string {
  const kept = name
    .normalize('NFC')
    .replace(/[^\p{L}\p{M}\p{N}_-]+/gu, '-')
    .replace(/^[\p{M}-]+|-+$/gu, '');
  const short = Array.from(kept).slice(0, LONGEST).join('');
  if (short === '') return 'unnamed';
  return DEVICES.test(short) ? `${short}_` : short;
}

/** So that name, number and extension stay below 255 bytes in any script. */
const LONGEST = 48;

/** Names that Windows keeps for itself, whatever the extension. */
const DEVICES = /^(con|prn|aux|nul|com[0-9¹²³]|lpt[0-9¹²³])$/i;

/** The same for names that some file system takes for one: case, composed letters, compatibility forms. */
function collisionKey(name: string): string {
  return name.normalize('NFKD').toUpperCase().toLowerCase();
}
