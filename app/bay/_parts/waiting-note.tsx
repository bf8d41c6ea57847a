'use client';

import { useEffect, useState } from 'react';
import { useTranslations } from 'use-intl/react';
import { Note } from '@/app/_look/note';
import type { Waiting } from '@/app/bay/_device/waiting';

/** What waits on this device to be sent, and sends it. */
export function WaitingNote({ who, code }: { who: string; code: string }) {
  const t = useTranslations('bay');
  const [waiting, setWaiting] = useState<Waiting | null>(null);
  useEffect(() => {
    let gone = false;
    const look = async () => {
      const { sendWaiting, waitingOn } = await import('@/app/bay/_device/waiting');
      await sendWaiting(who, code).catch(() => undefined);
      const found = await waitingOn(who).catch(() => null);
      if (!gone) setWaiting(found);
    };
    void look();
    const again = () => void look();
    window.addEventListener('online', again);
    return () => {
      gone = true;
      window.removeEventListener('online', again);
    };
  }, [who, code]);
  if (waiting === null || (waiting.own.length === 0 && waiting.others === 0)) return null;
  return (
    <Note kind="caution" live>
      {waiting.own.map(({ round, job, entries }) => (
        <p key={round}>
          {t('waiting.own', { entries, job })} <a href={`/bay/${round}`}>{t('waiting.go')}</a>
        </p>
      ))}
      {waiting.others > 0 && <p>{t('waiting.others', { entries: waiting.others })}</p>}
    </Note>
  );
}
