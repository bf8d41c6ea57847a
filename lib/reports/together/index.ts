/**
 * Works out what files of a shop say: on this thread, or on several where there is much. The figures are the same to
 * the last digit. A room of its own: no page may load what starts threads.
 */
export { type AssessedLines, assessLines, type Telling } from './assess-lines';
export { alone, type Crew, threads, withCrew } from './crew';
