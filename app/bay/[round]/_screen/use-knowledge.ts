import { useEffect, useState } from 'react';
import type { Knowledge } from '@/app/bay/_device/knowledge';

/** A gauge may be taken out of service while a round is measured, ms. */
const EVERY = 5 * 60_000;

/** What the page brought of the shop, brought up to date while there is a line. */
export function useKnowledge(round: number, first: Knowledge): Knowledge {
  const [knowledge, setKnowledge] = useState(first);
  useEffect(() => {
    const ask = async () => {
      try {
        const answer = await fetch(`/bay/${round}/knowledge`, { cache: 'no-store' });
        if (answer.ok) setKnowledge((await answer.json()) as Knowledge);
      } catch {
        // What is known already does until there is a line.
      }
    };
    const timer = setInterval(() => void ask(), EVERY);
    const back = () => void ask();
    window.addEventListener('online', back);
    return () => {
      clearInterval(timer);
      window.removeEventListener('online', back);
    };
  }, [round]);
  return knowledge;
}
