/** Browsers of the three users, signed in: what `test.use({ storageState })` takes. */
export const SIGNED_IN = {
  manager: 'test-results/signed-in/manager.json',
  trainer: 'test-results/signed-in/trainer.json',
  technician: 'test-results/signed-in/technician.json',
} as const;

export type User = keyof typeof SIGNED_IN;

/** Sign-in names of the demo shop, in the order of the page that offers them. */
export const SIGN_IN_NAMES: Record<User, string> = { manager: 'gre', trainer: 'hol', technician: 'qui' };

/** A browser of nobody. */
export const NOBODY = { cookies: [], origins: [] };
