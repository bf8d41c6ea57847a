import { root } from './run.mjs';
import { hashOf } from './stamp.mjs';

/** @returns {string} a stamp of the code that computes figures and verdicts */
export const program = () => hashOf(root, ['lib/assess', 'lib/stats', 'lib/measure']);
