import type { Metadata } from 'next';
import Link from 'next/link';
import { Page } from '@/app/_look/page';
import { Tag } from '@/app/_look/tag';
import prose from '@/app/_look/prose.module.css';
import { percent } from '@/app/_words/numbers';
import { CALL_GLYPHS, CALL_NAMES, CALL_SENTENCES, CALLS } from '@/app/_words/verdicts';
import { missCostOf, sureFrom } from '@/app/_shop/miss-cost';
import { enter } from '@/app/_shop/enter';

export const metadata: Metadata = { title: 'Method' };

export default async function Method() {
  const missCost = missCostOf((await enter()).shop);
  // A class is told from this probability on: the careful side of what missed damage costs against a needless re-hang.
  const sure = sureFrom(missCost);
  return (
    <Page
      title="How the verdicts are reached"
      lead="In plain words. What follows from a verdict on a vehicle is not decided here: read the cautions."
    >
      <div className={prose.prose}>
        <section>
          <h2>What a deviation is made of</h2>
          <p>
            A height that is off by 6 mm is the sum of a gauge part and a body part, with a little noise from
            reading. The gauge part is how this gauge was set and hung, less what the two zero gauges were off
            by, carried along the datum to this station. The body part is where the point really is, against
            the points at the zero stations.
          </p>
          <p>
            One reading cannot tell the two apart. All readings of a round together often can: the body stays
            where it is when a gauge is hung again, the setting does not. Both sides of one gauge alike point
            to the gauge; a length at the same point that is out as well points to the body; deviations that
            grow with the distance along a straight line point to the zero gauges.
          </p>
        </section>
        <section>
          <h2>What is said of a height</h2>
          <p>
            For every height four probabilities are worked out, which sum to one: that neither part, the gauge
            part alone, the body part alone, or both are larger than the tolerance. To miss damage is held to
            be {missCost} times as bad as a needless re-hang. So a height is called likely gauge, or neither,
            only from {percent(sure)} on, and only while the body keeps at most {percent(1 - sure)}; the body
            is suspected as soon as it is likelier than not. The manager sets this cost in the{' '}
            <Link href="/settings">settings</Link>.
          </p>
          <ul>
            {CALLS.map((call) => (
              <li key={call}>
                <Tag name={CALL_GLYPHS[call]}>{CALL_NAMES[call]}</Tag> {CALL_SENTENCES[call]}
              </li>
            ))}
          </ul>
          <p>
            The probabilities come from weighing explanations against each other: ordinary scatter, a gauge
            set wrong on one or both sides, slips of a known size (clearance left out or added twice, the
            neighbouring row of the sheet, another fixed mark, a tape read ten or a hundred millimetres off,
            sides or digits exchanged), a point that is damaged. How common each is, and how large, is learned
            from the shop’s own rounds and re-checks.
          </p>
        </section>
        <section>
          <h2>Center section first</h2>
          <p>
            Where lengths or diagonals of the center section are out, the datum is not to be trusted and no
            height of the round is decided. So it is where a zero station was not measured, or only one.
          </p>
        </section>
        <section>
          <h2>The next check</h2>
          <p>
            Of all single checks that could be made, the one is proposed that is expected to settle most doubt
            for its time. The gain is counted in bits: one bit is the doubt of a coin toss.
          </p>
        </section>
        <section>
          <h2>Repeatability, setting, bias</h2>
          <p>
            Repeatability is the scatter of reading again with the gauge untouched, pooled over all setups
            that were read more than once. Setting is the scatter of one side of a gauge when it is set and
            hung anew; mis-sets are put aside. Bias is what a technician’s or a gauge’s heights are high or
            low by, against the mean of all. Each comes with the range that holds the true figure 95 times in
            100; where two ranges overlap, the difference may be chance.
          </p>
        </section>
        <section>
          <h2>Right first time</h2>
          <p>
            A job is right first time when every controlled dimension of its first round after repair is
            within tolerance, the edge included. Where a dimension was set up more than once in the round, the
            last setup counts, by the mean of its readings. Rates carry Wilson’s 95 % interval. People are
            listed by code, never by rate.
          </p>
        </section>
        <section>
          <h2>How far to trust the probabilities</h2>
          <p>
            A re-check is the only proof. Of every height whose gauge was hung again, or whose cause somebody
            recorded, the <Link href="/calibration">calibration page</Link> holds what had been said against
            what was proved: of those called 80 %, how many proved so, with intervals. A shop with few
            re-checks cannot yet say from its own records how often an ‘80 %’ comes true, and the page says
            so.
          </p>
          <p>
            <Link href="/cautions">Cautions in full</Link>
          </p>
        </section>
      </div>
    </Page>
  );
}
