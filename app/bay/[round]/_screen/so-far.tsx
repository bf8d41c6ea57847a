import { useTranslations } from 'use-intl/react';
import { Tag } from '@/app/_look/tag';
import { signedMillimetres } from '@/app/_words/numbers';
import { useSpeech } from '@/app/_words/speech/device';
import {
  isAgainstOldDatum,
  isHidden,
  lastSetupAt,
  readAt,
  type BayRecord,
  type KeptEntry,
  type Place,
  type PlannedStep,
  type RecordedSetup,
  type Step,
} from '@/lib/bay';
import { placeName } from './names';
import styles from './so-far.module.css';

interface SoFarProps {
  plan: readonly PlannedStep[];
  record: BayRecord;
  kept: readonly KeptEntry[];
  clearance: number;
  again: (place: Place) => void;
  resume: (step: Step, place: string | null) => void;
}

const isLength = (place: Place): boolean => place.dimensions[0]?.quantity === 'length';

/** What was hung and read, place by place, with what was left out and why. */
export function SoFar({ plan, record, kept, clearance, again, resume }: SoFarProps) {
  const t = useTranslations('bay');
  const to = useSpeech();
  const rows = plan
    .flatMap(({ places }) => places)
    .flatMap((place) => {
      const setup = lastSetupAt(record, place);
      return setup === null ? [] : [{ place, setup }];
    });
  const wrong = [...record.checks].filter(([, { ok }]) => !ok);
  const notTaken = kept.filter(
    ({ key, body, conflict }) =>
      conflict !== null &&
      body.kind !== 'settle' &&
      !record.contradictions.some((one) => one.key === key) &&
      body.kind !== 'read' &&
      body.kind !== 'correct',
  );
  return (
    <div className={styles.soFar}>
      {rows.length === 0 && <p>{t('soFar.none')}</p>}
      <ul data-plain className={styles.rows}>
        {rows.map(({ place, setup }) => (
          <li key={place.key} className={styles.row}>
            <div>
              <strong>{placeName(place)}</strong>
              <p className={styles.quiet}>{gaugeText(place, setup)}</p>
            </div>
            {deviations(place, setup)}
            {!record.finished && (
              <button
                type="button"
                className={styles.again}
                onClick={() => again(place)}
                aria-label={t(isLength(place) ? 'kept.measureAgain' : 'kept.hangAgain', {
                  name: placeName(place),
                })}
              >
                {t(isLength(place) ? 'soFar.measure' : 'soFar.again')}
              </button>
            )}
          </li>
        ))}
      </ul>
      {wrong.length > 0 && (
        <div>
          <h3>{t('soFar.checks')}</h3>
          <ul>
            {wrong.map(([check, { note }]) => (
              <li key={check}>
                {t(`check.${check}.ask`)} {note}
              </li>
            ))}
          </ul>
        </div>
      )}
      {record.skipped.length > 0 && (
        <div>
          <h3>{t('soFar.left')}</h3>
          <ul data-plain className={styles.left}>
            {record.skipped.map(({ step, place, reason }) => (
              <li key={`${step} ${place ?? ''}`}>
                <span>
                  {place === null ? t(`steps.${step}`) : nameOf(place)}: {reason}
                </span>
                {!record.finished && (
                  <button type="button" className={styles.again} onClick={() => resume(step, place)}>
                    {t('steps.resume')}
                  </button>
                )}
              </li>
            ))}
          </ul>
        </div>
      )}
      {notTaken.length > 0 && (
        <div>
          <h3>{t('soFar.notTaken')}</h3>
          <ul>
            {notTaken.map(({ key, conflict }) => (
              <li key={key}>{conflict}</li>
            ))}
          </ul>
        </div>
      )}
    </div>
  );

  function nameOf(key: string): string {
    const place = plan.flatMap(({ places }) => places).find((one) => one.key === key);
    return place === undefined ? key : `${t(`steps.${place.step}`)}, ${placeName(place)}`;
  }

  function gaugeText(place: Place, setup: RecordedSetup): string {
    const times = record.setups.filter((one) => one.place === place.key).length;
    return times > 1 ? `${setup.gauge}, ${t('soFar.hangings', { n: times })}` : setup.gauge;
  }

  function deviations(place: Place, setup: RecordedSetup) {
    if (isHidden(record, place, setup)) return <span className={styles.quiet}>{t('soFar.hidden')}</span>;
    const read = readAt(place, setup, clearance);
    return (
      <ul data-plain className={styles.values}>
        {read.map(({ dimension, deviation, within }) => (
          <li key={`${dimension.point} ${dimension.side ?? ''}`}>
            {dimension.side !== null && <span>{t(`sides.${dimension.side}`)}</span>}
            <strong>{signedMillimetres(deviation, 1, to)}</strong>
            <Tag name={within ? 'within' : 'out'}>{t(within ? 'kept.within' : 'kept.out')}</Tag>
          </li>
        ))}
        {isAgainstOldDatum(plan, record, setup) && <li className={styles.quiet}>{t('soFar.stale')}</li>}
      </ul>
    );
  }
}
