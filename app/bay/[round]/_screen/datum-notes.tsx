import { useTranslations } from 'use-intl/react';
import { Note } from '@/app/_look/note';
import { millimetres, probability } from '@/app/_words/numbers';
import { useSpeech } from '@/app/_words/speech/device';
import { placeOf, type BayRecord, type PlannedStep } from '@/lib/bay';
import type { CaughtRound } from '@/lib/bay/caught';
import { placeName, pointName, toleranceText } from './names';

interface DatumNotesProps {
  plan: readonly PlannedStep[];
  record: BayRecord;
  round: CaughtRound;
}

/** What is to be heeded before any height: a center section that does not carry the datum, a zero gauge set wrong. */
export function DatumNotes({ plan, record, round }: DatumNotesProps) {
  const t = useTranslations('bay');
  const to = useSpeech();
  const { centerOut, datumTrusted, zeroMisset, check } = round;
  const nameOf = (label: string | null): string | null => {
    const setup = record.setups.find((one) => one.label === label);
    const place = setup === undefined ? null : placeOf(plan, setup.place);
    return place === null ? null : placeName(place);
  };
  const isZero = (label: string | null) =>
    record.setups.find((one) => one.label === label)?.place.startsWith('zero-gauges ') === true;
  const zeroName = check?.action === 'rehang' && isZero(check.setup) ? nameOf(check.setup) : null;
  return (
    <>
      {!datumTrusted && (
        <Note kind="fault" live>
          <p>
            <strong>{t('datum.lost')}</strong>{' '}
            {centerOut
              .map(({ point, deviation, tolerance }) =>
                t(deviation > 0 ? 'datum.long' : 'datum.short', {
                  name: pointName(point),
                  by: millimetres(Math.abs(deviation), 1, to),
                  tolerance: `±${toleranceText(tolerance, to)}`,
                }),
              )
              .join(' ')}
          </p>
          <p>{t('datum.lostDo')}</p>
        </Note>
      )}
      {datumTrusted && centerOut.length > 0 && (
        <Note kind="caution">
          <p>
            {centerOut.map(({ point }) => pointName(point)).join(', ')}: {t('datum.doubtful')}
          </p>
        </Note>
      )}
      {datumTrusted && zeroMisset !== null && zeroMisset >= 0.5 && (
        <Note kind="caution" live>
          <p>
            {zeroName === null
              ? t('datum.zeroAny', { p: probability(zeroMisset) })
              : t('datum.zero', { p: probability(zeroMisset), name: zeroName })}
          </p>
        </Note>
      )}
    </>
  );
}
