import { note } from './log';

/** What the framework says on the console goes into the log as well, errors without their messages. */
export function takeOverConsole(): void {
  console.error = (...parts: unknown[]) => note.said('error', parts);
  console.warn = (...parts: unknown[]) => note.said('warn', parts);
}
