/** What stands behind the verdicts of a round, in the reader's words. */
export { datumWords } from './datum-words';
export { hypothesisWords } from './hypothesis-words';
export { heightName, leftOverWords } from './left-over-words';
export { pieceName, times, weighingWords } from './weighing-words';
