/** What the store hands out and takes in: plain types, lengths in mm, times in epoch milliseconds (UTC). */
export * from './accounts';
export * from './bay';
export * from './jobs';
export * from './json';
export * from './outcomes';
export * from './proofs';
export * from './readings';
export * from './settings';
export * from './sheets';
export * from './shop';
export * from './trace';
export * from './trials';
export * from './verdicts';
