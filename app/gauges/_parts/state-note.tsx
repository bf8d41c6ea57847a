import { Note } from '@/app/_look/note';
import type { Gauge, GaugeVerdict } from '@/lib/access';
import { told } from '@/app/_words/told';
import { words } from '@/app/_words/words';

/** The state of a gauge and why, in a sentence or two, and what else its verifications show. */
export function StateNote({ gauge, verdict }: { gauge: Gauge; verdict: GaugeVerdict }) {
  return (
    <Note kind={gauge.state === 'out-of-service' ? 'caution' : 'plain'}>
      <p>{stateWords(gauge, verdict)}</p>
      {gauge.state !== 'retired' && verdict.notes.map((note) => <p key={note}>{told(note)}</p>)}
    </Note>
  );
}

/** The shop's record of the state holds; the sentence of the verifications where it says the same. */
function stateWords({ tag, state }: Gauge, verdict: GaugeVerdict): string {
  const t = words('gauges');
  const says = { 'in-service': 'in service', 'out-of-service': 'out of service', retired: null }[state];
  if (says === verdict.state) return told(verdict.sentence);
  if (state === 'retired') return t('state.retired', { tag });
  if (state === 'out-of-service') return t('state.out', { tag });
  return t(verdict.state === 'not verified' ? 'state.notVerified' : 'state.notBorneOut', { tag });
}
