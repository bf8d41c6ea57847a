import { Panel } from '@/app/_look/panel';
import { drawnOnce } from '@/app/_look/still';
import { SignalList } from '@/app/rates/signals/_parts/signal-list';
import { words } from '@/app/_words/words';
import type { SignalsAnswer } from '@/lib/assess/answers';

/** Hands that changed beyond chance, in the order of codes; nothing where none did. */
export const Changes = drawnOnce(function Changes({ answer }: { answer: SignalsAnswer | null }) {
  const changed = answer?.signals.filter(({ subject }) => subject.kind === 'technician') ?? [];
  if (changed.length === 0) return null;
  const t = words('training');
  return (
    <Panel id="changes" title={words('overview')('attention.changes')} note={t('changesNote')}>
      <SignalList signals={changed} />
    </Panel>
  );
});
