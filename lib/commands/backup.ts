/** `npm run -s backup -- FILE` writes everything the shop has into one file, while it works on. */
import { backup } from '@/lib/store/copying/backup';
import { inWords } from './reason-of';

const [file, ...more] = process.argv.slice(2);
if (file === undefined || more.length > 0) {
  console.error('Name one file that does not exist yet: npm run -s backup -- FILE');
  process.exit(1);
}
try {
  await backup(file);
  console.log(`Everything is in ${file}, checked. Bring it back with: npm run -s restore -- ${file}`);
} catch (error) {
  console.error(`Nothing was written. ${inWords(error)}`);
  process.exitCode = 1;
}
