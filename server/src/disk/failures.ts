/** What went wrong on the disk, in words. */

/** `permission denied` for an error of node:fs; its own message for any other. */
export function reasonOf(error: unknown): string {
  const code = codeOf(error);
  if (code !== undefined) return REASONS[code] ?? code;
  return error instanceof Error ? error.message : String(error);
}

/** `ENOENT` and the like; undefined for an error that is not the system's. */
export function codeOf(error: unknown): string | undefined {
  return error instanceof Error && 'code' in error && typeof error.code === 'string' ? error.code : undefined;
}

const REASONS: Readonly<Record<string, string>> = {
  ENOENT: 'no such file or folder',
  EACCES: 'permission denied',
  EPERM: 'permission denied',
  EROFS: 'the disk is read-only',
  ENOSPC: 'the disk is full',
  EDQUOT: 'the disk quota is used up',
  ENOTDIR: 'a file stands where a folder should',
  EISDIR: 'a folder stands where a file should',
  EEXIST: 'something of that name is there already',
  ELOOP: 'its links run in a circle',
  ENAMETOOLONG: 'the name is too long',
  EBUSY: 'another program holds it',
  EMFILE: 'too many files are open',
};
