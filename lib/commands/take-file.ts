/**
 * Reads and stores one file that came by the HTTP interface, in a process of its own: what is to be done comes as
 * JSON on standard input, what became of it goes to standard output.
 */
import { text } from 'node:stream/consumers';
import { arrived, takeFile } from '@/lib/interface/measurements/take-file';
import { note } from '@/lib/observe';
import { closeStore } from '@/lib/store';

try {
  const file = arrived.parse(JSON.parse(await text(process.stdin)));
  process.stdout.write(JSON.stringify(await takeFile(file)));
} catch (error) {
  note.fileFailed({ task: 'store' }, error);
  process.exitCode = 1;
} finally {
  await closeStore();
}
