import type { Metadata } from 'next';
import Link from 'next/link';
import { FiguresRow } from '@/app/_look/figures-row';
import { Note } from '@/app/_look/note';
import { Page } from '@/app/_look/page';
import { Panel } from '@/app/_look/panel';
import prose from '@/app/_look/prose.module.css';
import { NothingYet } from '@/app/_overview/nothing-yet';
import { missCostOf } from '@/app/_shop/miss-cost';
import { grouped, percent } from '@/app/_words/numbers';
import { CLEAR, provedOnly, roundsOf } from '@/lib/assess/calibration';
import { CalledPanel } from './_parts/called-panel';
import { asForetold } from './_parts/proofs';
import { ReliabilityPanel } from './_parts/reliability-panel';
import { ScorePanel } from './_parts/score-panel';
import { countJobs, provedHeights } from '@/lib/access';
import { enter } from '@/app/_shop/enter';

export const metadata: Metadata = { title: 'Calibration' };

/** Fewer proved heights than this say next to nothing, and the page says so before any figure. */
const FEW_HEIGHTS = 50;

export default async function Calibration() {
  const viewer = await enter();
  const { shop } = viewer;
  const [proofs, jobs] = await Promise.all([provedHeights(viewer), countJobs(viewer)]);
  if (jobs === 0) return <NothingYet title="Calibration" />;
  const heights = asForetold(proofs);
  const proved = provedOnly(heights);
  const recorded = proofs.filter(({ by }) => by === 'recorded').length;
  const ahead = proofs.filter((proof) => proof.ahead).length;
  return (
    <Page
      title="Calibration"
      lead="Of the heights that were called 80 % gauge, how many proved so? A probability is worth as much as it comes true."
    >
      <FiguresRow
        figures={[
          {
            name: 'Checked again',
            value: grouped(heights.length),
            detail: 'heights whose gauge was hung again, or whose cause was recorded',
          },
          {
            name: 'Proved',
            value: grouped(proved.length),
            detail: `in ${grouped(roundsOf(proved))} rounds; ${grouped(recorded)} on record, the others by hanging again`,
          },
          {
            name: 'Left open',
            value: grouped(heights.length - proved.length),
            detail: 'the check did not make it clear: not counted',
          },
          {
            name: 'Foretold',
            value: grouped(ahead),
            detail: 'said before anything was learned from these readings; the others look back',
          },
        ]}
      />
      {proved.length < FEW_HEIGHTS && (
        <Note>
          <p>
            {proved.length === 0
              ? 'No height has been proved yet: this page fills as gauges are hung again and outcomes are recorded.'
              : `Only ${proved.length} heights were proved so far. The intervals below are wide, and nothing here should be leaned on yet.`}
          </p>
        </Note>
      )}
      <CalledPanel heights={heights} missCost={missCostOf(shop)} />
      <ReliabilityPanel cause="gauge" title="Said: gauge alone" heights={heights} />
      <ReliabilityPanel cause="body" title="Said: body alone" heights={heights} />
      <ReliabilityPanel cause="both" title="Said: gauge and body" heights={heights} />
      <ReliabilityPanel cause="neither" title="Said: neither" heights={heights} />
      <ScorePanel heights={heights} />
      <Panel id="how" title="How this is counted, and what it cannot show">
        <div className={prose.prose}>
          <ul>
            <li>
              A height counts when its gauge was hung again in the same round, or when somebody recorded what
              a re-check showed. What was said of it is worked out from the readings before the check,
              recorded causes set aside.
            </li>
            <li>
              What a second hanging proves is told by all readings of the round together, and only where they
              are clear ({percent(CLEAR)} or more); otherwise the height is left open. That proof uses the
              same model as the verdict, so an error that both share would not show here. Outcomes recorded by
              a person are the better witness.
            </li>
            <li>
              Sure cases become clear more often than doubtful ones. So shares lean a little to the ends:
              below one half they come out lower, above it higher, than they would if every check decided.
            </li>
            <li>
              Gauges are hung again where somebody doubts a reading. This says how verdicts fare on such
              heights, not on heights that nobody doubted.
            </li>
            <li>
              Left and right of one gauge often share a cause. Wilson’s intervals take them as independent and
              are up to 1.4 times too narrow; those of the Brier score are not.
            </li>
            <li>
              Zero stations count only where a cause was recorded. Rounds whose center section does not carry
              the datum had no verdict and do not count. At most the newest 5,000 heights are shown.
            </li>
          </ul>
          <p>
            <Link href="/method">How the verdicts are reached</Link>
          </p>
        </div>
      </Panel>
    </Page>
  );
}
