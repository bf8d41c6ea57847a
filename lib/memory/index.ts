/** What a process keeps for a while, to spare work it did before. */
export { fewQuestions } from './few-questions';
export { frozen } from './frozen';
export { LastUsed } from './last-used';
export { onceFor } from './once-for';
export { sameFrom } from './same-from';
