/** What the hypotheses are called, the likeliest first. */
export const LETTERS = ['A', 'B', 'C', 'D'] as const;

export const letterOf = (index: number): string => LETTERS[index] ?? `${index + 1}`;
