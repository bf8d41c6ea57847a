'use client';

import { useEffect } from 'react';

/** Where signing out leads: nothing of whoever was here stays on the device but what the shop has not got. */
export function ForgetOnDevice() {
  useEffect(() => {
    import('@/app/bay/_device/forget')
      .then(
        ({ forget }) => forget(),
        () => undefined,
      )
      .catch(() => undefined);
  }, []);
  return null;
}
