import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import button from '@/app/_look/button.module.css';
import { Note } from '@/app/_look/note';
import { Page } from '@/app/_look/page';
import { Panel } from '@/app/_look/panel';
import { enter } from '@/app/_shop/enter';
import { said } from '@/app/_shop/said';
import { count } from '@/app/_words/numbers';
import { getTrial, may } from '@/lib/access';
import { trialOfPage } from '@/app/trials/_parts/trial-number';
import { trialAddress } from '@/app/trials/_parts/words';
import { CorrectForm } from './_parts/correct-form';
import { nextPlace } from './_parts/next-place';
import styles from './_parts/run.module.css';

export const metadata: Metadata = { title: 'Enter readings' };

export default async function Run({ params }: { params: Promise<{ id: string }> }) {
  const id = trialOfPage((await params).id);
  const viewer = await enter();
  const [trial, told] = await Promise.all([getTrial(viewer, id), said()]);
  if (trial === null) notFound();
  const next = trial.closedAt === null ? nextPlace(trial, viewer.code) : null;
  const all = trial.runs.length * trial.plan.readings;
  const whose = may(viewer, 'run trials') ? '' : 'your ';

  return (
    <Page above={<Link href={trialAddress(id)}>{trial.name}</Link>} title="Enter readings">
      {told !== null && (
        <Note live>
          <p>{told}</p>
        </Note>
      )}
      {next !== null ? (
        <Panel id="next" title={`Run ${next.line.order}, reading ${next.repeat} of ${next.line.readings}`}>
          <dl className={styles.place}>
            <div>
              <dt>Who reads</dt>
              <dd>{next.line.person}</dd>
            </div>
            <div>
              <dt>Point</dt>
              <dd>{next.line.point}</dd>
            </div>
            <div>
              <dt>Hanging</dt>
              <dd>
                {next.line.setup} of {trial.plan.setups}
              </dd>
            </div>
          </dl>
          <p className={styles.do}>
            {next.repeat === 1
              ? 'Take the gauge off, set it anew and hang it. Then read.'
              : 'Leave the gauge as it hangs. Look away, then read again.'}
          </p>
          <form className={styles.entry} action={`${trialAddress(id)}/run/enter`} method="post">
            <input type="hidden" name="run" value={next.line.order} />
            <input type="hidden" name="repeat" value={next.repeat} />
            <div>
              <label htmlFor="value">Reading, mm</label>
              {/* Keyed by its place, so that the field is empty and in focus for every new one. */}
              <input
                key={`${next.line.order} ${next.repeat}`}
                id="value"
                name="value"
                required
                // The one thing to do on this page: a number and Enter, with nothing to reach for.
                // eslint-disable-next-line jsx-a11y/no-autofocus
                autoFocus
                inputMode="decimal"
                maxLength={12}
                autoComplete="off"
              />
            </div>
            <button type="submit" className={button.strong}>
              Keep it
            </button>
          </form>
        </Panel>
      ) : (
        <Panel id="next" title={trial.closedAt === null ? 'All readings are in' : 'The trial is closed'}>
          <p>
            {trial.closedAt === null
              ? `There is nothing left to read in ${whose === '' ? 'this trial' : 'your part of it'}. Thank you.`
              : 'Nothing is entered any more.'}
          </p>
        </Panel>
      )}
      <div className={styles.progress}>
        <label htmlFor="progress">
          {trial.filled.length} of {whose}
          {count(all, 'reading')} are in
        </label>
        <progress id="progress" max={all} value={trial.filled.length} />
      </div>
      {trial.closedAt === null && trial.filled.length > 0 && (
        <details>
          <summary>Correct a reading</summary>
          <CorrectForm trial={trial} />
        </details>
      )}
    </Page>
  );
}
