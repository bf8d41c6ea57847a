import { useEffect, useState } from 'react';
import { stayThere } from '@/app/bay/_device/stay-there';
import { loadBeside } from './beside';
import { loadCaught } from './use-caught';

/** Whether this page opens without a connection too; null while that is not known. */
export function useCopied(ready: boolean): boolean | null {
  const [copied, setCopied] = useState<boolean | null>(null);
  useEffect(() => {
    if (!ready) return;
    let gone = false;
    // What comes after the page has to be there as well.
    Promise.all([loadCaught(), loadBeside(), import('@/app/bay/_helper/helper')])
      .then(() => stayThere())
      .then(
        (there) => {
          if (!gone) setCopied(there);
        },
        () => undefined,
      );
    return () => {
      gone = true;
    };
  }, [ready]);
  return copied;
}
