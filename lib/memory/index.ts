/** What a process keeps for a while, to spare work it did before. */
export { LastUsed } from './last-used';
export { sameFrom } from './same-from';
