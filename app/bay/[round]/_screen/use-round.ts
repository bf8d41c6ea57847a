import { useEffect, useMemo, useState, useSyncExternalStore } from 'react';
import type { BayHead, KeptEntry } from '@/lib/bay';
import type { RoundOnDevice, Shown } from '@/app/bay/_device/round-on-device';
import type { Whose } from '@/app/bay/_device/standing';

const nothing = () => () => undefined;

/** The round as this device holds it, and how something is entered. What keeps it comes after the page is drawn. */
export function useRound(
  whose: Whose,
  head: BayHead,
  kept: KeptEntry[],
): { shown: Shown; enter: RoundOnDevice['enter'] } {
  const [round, setRound] = useState<RoundOnDevice | null>(null);
  const first = useMemo(
    (): Shown => ({ state: 'opening', head, device: '', kept, own: [], trouble: null, sending: false }),
    [head, kept],
  );
  useEffect(() => {
    let made: RoundOnDevice | null = null;
    let gone = false;
    void import('@/app/bay/_device/round-on-device').then(({ RoundOnDevice: Round }) => {
      if (gone) return;
      made = new Round(whose, head, kept);
      setRound(made);
      void made.start();
    });
    return () => {
      gone = true;
      made?.stop();
    };
  }, [whose, head, kept]);
  const shown = useSyncExternalStore(
    round?.subscribe ?? nothing,
    () => round?.shown() ?? first,
    () => first,
  );
  return { shown, enter: round?.enter ?? notYet };
}

const notYet: RoundOnDevice['enter'] = () => Promise.reject(new Error('The round is not open yet.'));
