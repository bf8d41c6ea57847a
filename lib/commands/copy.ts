/** `npm run -s copy -- FROM TO` copies everything from one database into another, empty one, and compares them. */
import { copy } from '@/lib/store/copying/copy';
import { inWords } from './reason-of';

const [from, to, ...more] = process.argv.slice(2);
if (from === undefined || to === undefined || more.length > 0) {
  console.error('Name both databases: npm run -s copy -- file:data/rehang.db postgresql://user@host/rehang');
  process.exit(1);
}
try {
  const { rows } = await copy(from, to, (line) => console.log(line));
  const sum = [...rows.values()].reduce((all, some) => all + some, 0);
  console.log(`Copied and compared: ${sum} rows in ${rows.size} tables.`);
} catch (error) {
  console.error(`Nothing was copied. ${inWords(error)}`);
  process.exitCode = 1;
}
