import { createHash } from 'node:crypto';
import type { SourceFile } from '@/lib/store';

/** A file as the store keeps it, told apart from others by its name. */
export const namedFile = (name: string, readings: number): SourceFile => ({
  name,
  sha256: createHash('sha256').update(name).digest('hex'),
  lines: readings + 1,
});
