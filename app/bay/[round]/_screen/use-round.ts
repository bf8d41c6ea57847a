import { useEffect, useState, useSyncExternalStore } from 'react';
import type { BayHead, KeptEntry } from '@/lib/bay';
import type { Whose } from '@/app/bay/_device/keep';
import { RoundOnDevice, type Shown } from '@/app/bay/_device/round-on-device';

/** The round as this device holds it, and how something is entered. */
export function useRound(
  whose: Whose,
  head: BayHead,
  kept: KeptEntry[],
): { shown: Shown; enter: RoundOnDevice['enter'] } {
  const [round] = useState(() => new RoundOnDevice(whose, head, kept));
  useEffect(() => {
    void round.start();
    return () => round.stop();
  }, [round]);
  const shown = useSyncExternalStore(round.subscribe, round.shown, round.shown);
  return { shown, enter: round.enter };
}
