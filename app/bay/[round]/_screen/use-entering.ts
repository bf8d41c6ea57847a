import { useState } from 'react';
import { DoneAlready, type Standing } from '@/app/bay/_device/standing';
import type { RoundOnDevice } from '@/app/bay/_device/round-on-device';
import type { EntryBody } from '@/lib/bay';
import { stayKept } from './stay-kept';

/** Why the last thing was not kept: the device cannot, or another tab or device had done it already. */
export type Trouble = 'failed' | 'meanwhile';

export interface Entering {
  trouble: Trouble | null;
  /** Enters what is made from the present state of the round. @returns false where nothing could be kept. */
  tryTo: (make: (standing: Standing) => EntryBody[]) => Promise<boolean>;
  enter: (bodies: EntryBody[]) => Promise<void>;
}

export function useEntering(enter: RoundOnDevice['enter']): Entering {
  const [trouble, setTrouble] = useState<Trouble | null>(null);
  const tryTo = async (make: (standing: Standing) => EntryBody[]): Promise<boolean> => {
    try {
      await enter(make);
      setTrouble(null);
      void stayKept();
      return true;
    } catch (error) {
      setTrouble(error instanceof DoneAlready ? 'meanwhile' : 'failed');
      return error instanceof DoneAlready;
    }
  };
  return {
    trouble,
    tryTo,
    enter: async (bodies) => {
      await tryTo(() => bodies);
    },
  };
}
