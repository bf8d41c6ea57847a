import { Note } from '@/app/_look/note';
import { dayAndTime } from '@/app/_words/times';

interface FiguresAgeProps {
  /** When the figures were worked out; null before the first time. */
  fit: { fittedAt: number; stale: boolean } | null;
  timeZone: string;
}

/** Says where figures lag behind the readings: after a load they are worked out anew behind the pages. */
export function FiguresAge({ fit, timeZone }: FiguresAgeProps) {
  if (fit?.stale === false) return null;
  return (
    <Note live>
      <p>
        {fit === null
          ? 'Figures and verdicts are being worked out from the readings for the first time. Reload the page in a minute.'
          : `Readings have come in since the figures and verdicts were worked out (${dayAndTime(fit.fittedAt, timeZone)}). They are being worked out anew; reload the page in a minute.`}
      </p>
    </Note>
  );
}
