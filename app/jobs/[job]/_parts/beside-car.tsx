import Link from 'next/link';
import { Panel } from '@/app/_look/panel';
import prose from '@/app/_look/prose.module.css';
import { words } from '@/app/_words/words';
import { besideCar, type BesideCar, type Viewer } from '@/lib/access';

/** What was checked, left out and left open where a round of this job was measured beside the car. */
export async function BesideCarPanel({ viewer, job }: { viewer: Viewer; job: string }) {
  const rounds = await besideCar(viewer, job);
  if (rounds.length === 0) return null;
  const t = words('bay');
  return (
    <Panel id="beside" title={t('beside.title')} note={t('beside.note')}>
      <div className={prose.prose}>
        {rounds.map((round) => (
          <section key={round.id}>
            <h3>
              <Link href={`/bay/${round.id}`} prefetch={false}>
                {t('round.name', { job, stage: round.stage, attempt: round.attempt })}
              </Link>
            </h3>
            <OneRound round={round} />
          </section>
        ))}
      </div>
    </Panel>
  );
}

function OneRound({ round: { finishedAt, checks, leftOut, unsettled } }: { round: BesideCar }) {
  const t = words('bay');
  const wrong = checks.filter(({ ok }) => !ok);
  return (
    <ul>
      {finishedAt === null && <li>{t('beside.open')}</li>}
      <li>{checksText()}</li>
      {wrong.map(({ check, note }) => (
        <li key={check}>
          {t('beside.wrong', { what: t(`check.${check}.ask`), note: note ?? t('beside.noNote') })}
        </li>
      ))}
      {leftOut.length === 0 && <li>{t('beside.nothingLeftOut')}</li>}
      {leftOut.map(({ step, place, reason }) => (
        <li key={`${step} ${place ?? ''}`}>
          {place === null
            ? t('beside.leftOutStep', { step: t(`steps.${step}`), reason })
            : t('beside.leftOut', { step: t(`steps.${step}`), place: place.replace('-', '–'), reason })}
        </li>
      ))}
      {unsettled > 0 && <li>{t('beside.unsettled', { n: unsettled })}</li>}
    </ul>
  );

  function checksText(): string {
    if (checks.length === 0) return t('beside.noChecks');
    return t('beside.checks', { n: checks.length, right: checks.length - wrong.length });
  }
}
