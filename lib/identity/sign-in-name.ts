export const SHORTEST_NAME = 3;
export const LONGEST_NAME = 30;

/** Letters without accents, digits, dot and underscore: what every keyboard can type. */
export function isSignInName(text: string): boolean {
  return text.length >= SHORTEST_NAME && text.length <= LONGEST_NAME && /^[A-Za-z0-9_.]+$/.test(text);
}

/** Upper and lower case are one name. */
export const signInNameOf = (text: string): string => text.trim().toLowerCase();
