/** Begins a program in TypeScript: `node lib/commands/begin.mjs lib/commands/report.ts FILE…`. */
import { join } from 'node:path';
import { setFlagsFromString } from 'node:v8';
import { begin } from './programs.mjs';
import { root } from './run.mjs';

const program = process.argv[2] ?? '';
// It finds its own arguments where every program does.
process.argv.splice(1, 2, join(root, program));
// The database client's WebAssembly asks its few questions of a program: compiling it a second time, for speed, takes
// longer than all of them. It is half of what a short program takes of the processor.
setFlagsFromString('--liftoff-only');
// What a program does a million times it does in a few hundred functions. Compiled after eight times as many runs as by
// default, they are compiled knowing what they meet, and seldom twice: compiling was a third of a report.
setFlagsFromString('--interrupt-budget=540000');
await begin(program);
