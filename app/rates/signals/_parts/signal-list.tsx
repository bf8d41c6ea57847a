import type { Signal } from '@/lib/assess/signals';
import { seriesKey } from './names';
import { SignalLine, type Opens } from './signal-line';

interface SignalListProps {
  signals: readonly Signal[];
  opens?: Opens;
  className?: string | undefined;
}

/** Signals, line by line. */
export function SignalList({ signals, opens, className }: SignalListProps) {
  return (
    <ul className={className} data-plain>
      {signals.map((signal) => (
        <SignalLine
          key={seriesKey(signal.what, signal.subject)}
          signal={signal}
          {...(opens !== undefined && { opens })}
        />
      ))}
    </ul>
  );
}
