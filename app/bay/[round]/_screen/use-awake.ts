import { useEffect } from 'react';

/** Keeps the screen lit while the round is measured, where the browser can. */
export function useAwake(on: boolean): void {
  useEffect(() => {
    const { wakeLock } = navigator as { wakeLock?: WakeLock };
    if (!on || wakeLock === undefined) return;
    let lock: WakeLockSentinel | null = null;
    let gone = false;
    const ask = async () => {
      if (document.visibilityState !== 'visible') return;
      // Refused on a low battery: then it goes dark as it always did.
      const given = await wakeLock.request('screen').catch(() => null);
      if (gone) await given?.release();
      else lock = given;
    };
    const again = () => void ask();
    document.addEventListener('visibilitychange', again);
    again();
    return () => {
      gone = true;
      document.removeEventListener('visibilitychange', again);
      void lock?.release();
    };
  }, [on]);
}
