/** Words of the part `sheets`, on the server and in the browser alike. */
export type Say = (key: string, values?: Record<string, string | number>) => string;

/**
 * Both translators as one plain function: what page and editor share names its words by codes of the domain (`checks.…`,
 * `features.…`); a test holds that each has its words in every language.
 */
export const sayer = (translator: unknown): Say => translator as Say;
