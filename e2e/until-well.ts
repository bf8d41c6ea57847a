import { expect, type Page } from '@playwright/test';

/** Waits until the server there says that it is well. */
export const untilWell = (page: Page, base: string): Promise<void> =>
  expect
    .poll(
      () =>
        page.request.get(`${base}/health`).then(
          (one) => one.status(),
          () => 0,
        ),
      { timeout: 30_000 },
    )
    .toBe(200);
