import pg from 'pg';

/** What the driver says of a failed statement: a code of the database's own, and its words. */
interface Cause {
  originalCode?: string;
  originalMessage?: string;
}

/** Codes of both databases, by how they begin. */
const SENTENCES: readonly [codes: RegExp, sentence: string][] = [
  [/^(SQLITE_FULL|53100)/, 'The disk that holds the database is full. Make room and try again.'],
  [/^(SQLITE_READONLY|25006)/, 'The database may only be read. Let this user write to it and try again.'],
  [/^SQLITE_CANTOPEN/, 'The database cannot be opened. See that its folder exists and may be written to.'],
  [
    /^(SQLITE_CORRUPT|SQLITE_NOTADB)/,
    'The file of the database is damaged or is no database. Restore the last backup.',
  ],
  [/^SQLITE_IOERR/, 'The disk that holds the database failed to read or write. See that it is in order.'],
  [/^(ECONNREFUSED|ENOTFOUND|ETIMEDOUT|08)/, 'The database server cannot be reached. See that it runs.'],
  [/^28/, 'The database server refuses this user or password. Correct DATABASE_URL.'],
  [/^3D000/, 'The database server has no database of this name. Make it, or correct DATABASE_URL.'],
  [/^57P0/, 'The database server has stopped or ended the connection. Try again.'],
];

/** In a sentence, what went wrong in the database; null where the error is not the database's. */
export function databaseFailure(error: unknown): string | null {
  const cause = causeOf(error);
  const code = cause?.originalCode ?? codeOf(error);
  const known = SENTENCES.find(([codes]) => codes.test(code));
  if (known !== undefined) return known[1];
  const isDrivers = code.startsWith('SQLITE_') || error instanceof pg.DatabaseError;
  const told = cause?.originalMessage ?? (isDrivers ? messageOf(error) : null);
  return told === null ? null : `The database refused it: ${told} (${code}).`;
}

/** Prisma hands on the driver's error as it is, or within its own. */
function causeOf(error: unknown): Cause | null {
  const driver = property(property(error, 'meta'), 'driverAdapterError') ?? error;
  const cause = property(driver, 'cause');
  return typeof property(cause, 'originalCode') === 'string' ? (cause as Cause) : null;
}

/** The databases' own drivers, which our own questions and rows by the million go to, say it in the message. */
const messageOf = (error: unknown): string | null => (error instanceof Error ? error.message : null);

function codeOf(error: unknown): string {
  const code = property(error, 'code');
  return typeof code === 'string' ? code : '';
}

const property = (of: unknown, name: string): unknown =>
  typeof of === 'object' && of !== null && name in of ? (of as Record<string, unknown>)[name] : undefined;
