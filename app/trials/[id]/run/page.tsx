import Link from 'next/link';
import { notFound } from 'next/navigation';
import button from '@/app/_look/button.module.css';
import { Note } from '@/app/_look/note';
import { Page } from '@/app/_look/page';
import { Panel } from '@/app/_look/panel';
import { enter } from '@/app/_shop/enter';
import { said } from '@/app/_shop/said';
import { unit } from '@/app/_words/numbers';
import { titled } from '@/app/_words/titled';
import { words } from '@/app/_words/words';
import { getTrial, may } from '@/lib/access';
import { trialOfPage } from '@/app/trials/_parts/trial-number';
import { trialAddress } from '@/app/trials/_parts/words';
import { CorrectForm } from './_parts/correct-form';
import { nextPlace } from './_parts/next-place';
import styles from './_parts/run.module.css';

export const generateMetadata = titled(() => words('trials')('run.title'));

export default async function Run({ params }: { params: Promise<{ id: string }> }) {
  const id = trialOfPage((await params).id);
  const viewer = await enter();
  const [trial, told] = await Promise.all([getTrial(viewer, id), said()]);
  if (trial === null) notFound();
  const next = trial.closedAt === null ? nextPlace(trial, viewer.code) : null;
  const all = trial.runs.length * trial.plan.readings;
  const t = words('trials');
  const whole = may(viewer, 'run trials');
  const counted = { filled: trial.filled.length, n: all };

  return (
    <Page above={<Link href={trialAddress(id)}>{trial.name}</Link>} title={t('run.title')}>
      {told !== null && (
        <Note live>
          <p>{told}</p>
        </Note>
      )}
      {next !== null ? (
        <Panel
          id="next"
          title={t('run.head', {
            run: String(next.line.order),
            repeat: next.repeat,
            readings: next.line.readings,
          })}
        >
          <dl className={styles.place}>
            <div>
              <dt>{t('run.who')}</dt>
              <dd>{next.line.person}</dd>
            </div>
            <div>
              <dt>{t('run.point')}</dt>
              <dd>{next.line.point}</dd>
            </div>
            <div>
              <dt>{t('run.hanging')}</dt>
              <dd>{t('of', { n: next.line.setup, all: trial.plan.setups })}</dd>
            </div>
          </dl>
          <p className={styles.do}>{next.repeat === 1 ? t('run.hang') : t('run.again')}</p>
          <form className={styles.entry} action={`${trialAddress(id)}/run/enter`} method="post">
            <input type="hidden" name="run" value={next.line.order} />
            <input type="hidden" name="repeat" value={next.repeat} />
            <div>
              <label htmlFor="value">{t('run.reading', { unit: unit() })}</label>
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
              {t('run.keep')}
            </button>
          </form>
        </Panel>
      ) : (
        <Panel id="next" title={trial.closedAt === null ? t('run.allIn') : t('run.closed')}>
          <p>{trial.closedAt === null ? t(whole ? 'run.nothingLeft' : 'run.nothingOwn') : t('run.noMore')}</p>
        </Panel>
      )}
      <div className={styles.progress}>
        <label htmlFor="progress">{t(whole ? 'run.progress' : 'run.progressOwn', counted)}</label>
        <progress id="progress" max={all} value={trial.filled.length} />
      </div>
      {trial.closedAt === null && trial.filled.length > 0 && (
        <details>
          <summary>{t('run.correct')}</summary>
          <CorrectForm trial={trial} />
        </details>
      )}
    </Page>
  );
}
