import { LONGEST_PASSWORD, SHORTEST_PASSWORD } from './password';
import { LONGEST_NAME, SHORTEST_NAME } from './sign-in-name';

/** How long a sign-in name and a password may be. */
export const LIMITS = {
  shortestName: SHORTEST_NAME,
  longestName: LONGEST_NAME,
  shortestPassword: SHORTEST_PASSWORD,
  longestPassword: LONGEST_PASSWORD,
} as const;
