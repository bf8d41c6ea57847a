'use client';

import { useEffect } from 'react';

/** Of the database and of the copies alike. */
const NAME = 'rehang-bay';

const isThere = async (): Promise<boolean> =>
  (await indexedDB.databases()).some(({ name }) => name === NAME) ||
  (typeof caches !== 'undefined' && (await caches.has(NAME)));

/** Where signing out leads: nothing of whoever was here stays on the device but what the shop has not got. */
export function ForgetOnDevice() {
  useEffect(() => {
    const leave = async () => {
      if (!(await isThere())) return;
      const { forget } = await import('@/app/bay/_device/forget');
      await forget();
    };
    leave().catch(() => undefined);
  }, []);
  return null;
}
