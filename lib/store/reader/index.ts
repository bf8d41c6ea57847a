/**
 * Reading a measurement file from the disk to store it, on a thread of its own where it is large. For programs alone:
 * no page may import it, or the thread would become part of the served bundle.
 */
export { getReady, loadFile, type FileLoaded, type Progress } from './load-file';
export type { PathToRead } from './read-path';
