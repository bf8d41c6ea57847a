const REASONS: Record<string, (path: string) => string> = {
  ENOENT: (path) => `There is no file ${path}.`,
  EISDIR: (path) => `${path} is a folder. Name the files in it.`,
  EACCES: (path) => `${path} may not be read by this user.`,
};

/** Why a file could not be read, in a sentence; what nobody can act on is thrown on. */
export function reasonOf(error: unknown, path: string): string {
  const code = typeof error === 'object' && error !== null && 'code' in error ? String(error.code) : '';
  const reason = REASONS[code];
  if (reason === undefined) throw error;
  return reason(path);
}
