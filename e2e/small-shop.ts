import { test as base } from '@playwright/test';
import { enterOtherShop } from './other-shop';
import { NOBODY } from './signed-in';

type SignedIn = Awaited<ReturnType<typeof enterOtherShop>>;

/**
 * Knows a shop that begins empty, one for each worker, and its manager BOSS. Figures of a few readings are worked out
 * anew in a moment; those of the demo shop keep a processor busy while the next tests want it.
 */
export const test = base.extend<object, { smallShop: SignedIn }>({
  smallShop: [
    async ({ playwright }, use, { config, project, workerIndex }) => {
      const { baseURL } = project.use;
      const request = await playwright.request.newContext({
        ...(baseURL !== undefined && { baseURL }),
        storageState: NOBODY,
      });
      const letters = String(workerIndex).replaceAll(/\d/g, (digit) => 'abcdefghij'.charAt(Number(digit)));
      await use(await enterOtherShop(config, request, `Small Quay ${letters}`));
      await request.dispose();
    },
    { scope: 'worker' },
  ],
});

/** For `test.use`: tests that load or change readings, and need none of the demo shop's. */
export const IN_SMALL_SHOP: Parameters<typeof test.use>[0] = {
  storageState: ({ smallShop }, use) => use(smallShop),
};
