import { resolve } from 'node:path';

/** Where the measurements are kept, from `DATABASE_URL`. */
export type DatabaseUrl = { engine: 'sqlite'; path: string } | { engine: 'postgresql'; url: string };

export type EngineName = DatabaseUrl['engine'];

/**
 * Reads a database address.
 * @param text `file:` and a path (from the working folder), or `postgresql://…`; `file:data/rehang.db` where absent.
 * @throws Error naming the address, without its password, when it is neither.
 */
export function databaseUrl(text: string | undefined = process.env.DATABASE_URL): DatabaseUrl {
  const given = text === undefined || text === '' ? 'file:data/rehang.db' : text;
  if (given.startsWith('file:')) {
    const path = given.slice('file:'.length).split('?')[0] ?? '';
    if (path === '')
      throw new Error('DATABASE_URL names no file after "file:"; write for example file:data/rehang.db.');
    return { engine: 'sqlite', path: resolve(/* turbopackIgnore: true */ path) };
  }
  if (/^postgres(ql)?:\/\//.test(given)) return { engine: 'postgresql', url: given };
  const shown = given.replace(/\/\/[^@/]*@/, '//…@');
  throw new Error(
    `DATABASE_URL is ${shown}; it must start with file: (SQLite) or postgresql:// (PostgreSQL).`,
  );
}
