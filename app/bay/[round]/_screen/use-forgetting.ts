import { useEffect } from 'react';

/** Whoever was here before has nothing of theirs left on the device but what the shop has not got. */
export function useForgetting(who: string): void {
  useEffect(() => {
    import('@/app/bay/_device/forget').then(({ forget }) => forget(who)).catch(() => undefined);
  }, [who]);
}
