import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';

/**
 * Looks for barriers in the page itself: where there are no frames within, the results need not be put together in a
 * page of its own. And of what is in order nothing is written down. Both together are half of a look.
 */
export function axe(page: Page): AxeBuilder {
  if (page.frames().length > 1) throw new Error('Frames within a page would not be looked at.');
  return new AxeBuilder({ page }).options({ resultTypes: ['violations'] }).setLegacyMode();
}
