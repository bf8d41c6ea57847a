/** Of an error, what may stand in a log. */
export interface Told {
  /** Class of the error. */
  error: string;
  /** A code of the database or of the system, or by which the framework names a failed page. */
  code?: string;
  /** Where in the program, innermost first. */
  at?: string[];
}

const FRAMES = 8;
const LONGEST_FRAME = 300;

/**
 * An error without its message: messages are written for the person who sees them, and name people, vehicles and
 * values. Where it was thrown is enough to find it.
 */
export function told(error: unknown): Told {
  if (!(error instanceof Error)) return { error: typeof error };
  const code = codeOf(error) ?? codeOf(error.cause);
  const at = framesOf(error);
  return {
    error: error.name,
    ...(code !== null && { code }),
    ...(at.length > 0 && { at }),
  };
}

/** Short and without blanks, as codes are; anything else could be a sentence. */
function codeOf(error: unknown): string | null {
  if (typeof error !== 'object' || error === null) return null;
  for (const name of ['originalCode', 'code', 'digest'] as const) {
    const value = (error as Record<string, unknown>)[name];
    if (typeof value === 'string' && value.length <= 40 && /^[\w:;.-]+$/.test(value)) return value;
  }
  return null;
}

/** The frames are the lines after the message, whatever that holds. */
function framesOf({ stack = '', message }: Error): string[] {
  const end = stack.indexOf(message);
  const after = end < 0 ? stack : stack.slice(end + message.length);
  return after
    .split('\n', 60)
    .map((line) => line.trim())
    .filter((line) => line.startsWith('at ') && line.length <= LONGEST_FRAME && /\d:\d+\)?$/.test(line))
    .slice(0, FRAMES)
    .map((line) => line.slice(3).replaceAll(`${process.cwd()}/`, ''));
}
