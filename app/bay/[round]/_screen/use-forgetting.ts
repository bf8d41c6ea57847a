import { useEffect } from 'react';
import { forget } from '@/app/bay/_device/forget';

/** Whoever was here before has nothing of theirs left on the device but what the shop has not got. */
export function useForgetting(who: string): void {
  useEffect(() => {
    forget(who).catch(() => undefined);
  }, [who]);
}
