import Link from 'next/link';
import { Note } from '@/app/_look/note';
import { words } from '@/app/_words/words';
import { gaugeAddress } from '@/app/_words/address';
import { listGauges, type Viewer } from '@/lib/access';
import type { Round } from '@/lib/measure';

/** Names the gauges of these rounds that are out of service by now: what they read deserves a second look. */
export async function OutOfService({ viewer, rounds }: { viewer: Viewer; rounds: readonly Round[] }) {
  const hung = new Set(rounds.flatMap(({ setups }) => setups.map(({ gauge }) => gauge)));
  const out = (await listGauges(viewer)).filter(
    ({ tag, state }) => state === 'out-of-service' && hung.has(tag),
  );
  if (out.length === 0) return null;
  return (
    <Note kind="caution">
      <p>
        {words('jobs').rich('outOfService', {
          gauges: () =>
            out.map(({ tag }, index) => (
              <span key={tag}>
                {index > 0 && ', '}
                <Link href={gaugeAddress(tag)}>{tag}</Link>
              </span>
            )),
        })}
      </p>
    </Note>
  );
}
