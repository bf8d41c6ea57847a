/**
 * Reading a measurement file from the disk to store it, on a thread of its own where it is large. For programs alone:
 * no page may import it, or the thread would become part of the served bundle.
 */
export { saveFileReadings } from '@/lib/store/save/save-table';
export { withFile, type FileRead } from './with-file';
export type { PathToRead } from './read-path';
