/** Share of storing a file that reading it again is; the rest is writing. */
export const READ_FIRST = 0.2;
