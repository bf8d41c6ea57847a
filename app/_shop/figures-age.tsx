import { Note } from '@/app/_look/note';
import { dayAndTime } from '@/app/_words/times';
import { words } from '@/app/_words/words';

interface FiguresAgeProps {
  /** When the figures were worked out; null before the first time. */
  fit: { fittedAt: number; stale: boolean } | null;
  timeZone: string;
}

/** Says where figures lag behind the readings: after a load they are worked out anew behind the pages. */
export function FiguresAge({ fit, timeZone }: FiguresAgeProps) {
  if (fit?.stale === false) return null;
  const t = words('shop');
  return (
    <Note live>
      <p>
        {fit === null ? t('firstFigures') : t('olderFigures', { when: dayAndTime(fit.fittedAt, timeZone) })}
      </p>
    </Note>
  );
}
