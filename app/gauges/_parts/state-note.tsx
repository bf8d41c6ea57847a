import { Note } from '@/app/_look/note';
import type { Gauge, GaugeVerdict } from '@/lib/access';

/** The state of a gauge and why, in a sentence or two, and what else its verifications show. */
export function StateNote({ gauge, verdict }: { gauge: Gauge; verdict: GaugeVerdict }) {
  return (
    <Note kind={gauge.state === 'out-of-service' ? 'caution' : 'plain'}>
      <p>{words(gauge, verdict)}</p>
      {gauge.state !== 'retired' && verdict.notes.map((note) => <p key={note}>{note}</p>)}
    </Note>
  );
}

/** The shop's record of the state holds; the sentence of the verifications where it says the same. */
function words({ tag, state }: Gauge, verdict: GaugeVerdict): string {
  const says = { 'in-service': 'in service', 'out-of-service': 'out of service', retired: null }[state];
  if (says === verdict.state) return verdict.sentence;
  if (state === 'retired') return `Gauge ${tag} is retired: it hangs no more.`;
  if (state === 'out-of-service')
    return `Gauge ${tag} is out of service until verified: do not hang it before a verification has passed.`;
  return verdict.state === 'not verified'
    ? `Gauge ${tag} is kept in service, but nothing is known of its error: verify it.`
    : `Gauge ${tag} is kept in service, but its verifications do not bear that out: verify it again.`;
}
