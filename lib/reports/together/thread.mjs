// A thread starts without what its process was started with, so it must be told first how to read TypeScript.
import { begin } from '../../commands/programs.mjs';

await begin('lib/reports/together/thread.ts');
