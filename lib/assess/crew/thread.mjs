// A thread starts without what its process was started with, so it must be told first how to read TypeScript.
import { register } from 'tsx/esm/api';

register();
await import('./thread.ts');
