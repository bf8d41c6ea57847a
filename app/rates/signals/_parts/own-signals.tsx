import { drawnOnce } from '@/app/_look/still';
import { words } from '@/app/_words/words';
import type { Signal } from '@/lib/assess/signals';
import { SignalList } from './signal-list';

interface OwnSignalsProps {
  signals: readonly Signal[];
  /** Whether the reader may see everybody's charts. */
  charts: boolean;
}

/** What changed beyond chance, on the page of the hand or gauge that it is of; nothing where nothing did. */
export const OwnSignals = drawnOnce(function OwnSignals({ signals, charts }: OwnSignalsProps) {
  if (signals.length === 0) return null;
  return (
    <>
      <h3>{words('overview')('attention.changes')}</h3>
      <SignalList signals={signals} opens={charts ? 'chart' : 'nothing'} />
    </>
  );
});
