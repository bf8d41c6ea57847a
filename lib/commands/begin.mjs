/** Begins a program in TypeScript: `node lib/commands/begin.mjs lib/commands/report.ts FILE…`. */
import { join } from 'node:path';
import { begin } from './programs.mjs';
import { root } from './run.mjs';

const program = process.argv[2] ?? '';
// It finds its own arguments where every program does.
process.argv.splice(1, 2, join(root, program));
await begin(program);
