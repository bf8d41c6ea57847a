import { useState, type SubmitEvent } from 'react';
import { useTranslations } from 'use-intl/react';
import button from '@/app/_look/button.module.css';
import { bareMillimetres, unit } from '@/app/_words/numbers';
import { useSpeech } from '@/app/_words/speech/device';
import {
  isHidden,
  placeOf,
  typedLengths,
  type BayRecord,
  type EntryBody,
  type PlannedStep,
  type RecordedReading,
  type RecordedSetup,
} from '@/lib/bay';
import { withoutRoundingNoise } from '@/lib/measure/deviation';
import { dimensionText } from './names';
import { backToNow } from './use-focus';
import styles from './prompt.module.css';

interface CorrectFormProps {
  plan: readonly PlannedStep[];
  record: BayRecord;
  enter: (bodies: EntryBody[]) => Promise<void>;
}

interface Correctable {
  setup: RecordedSetup;
  reading: RecordedReading;
  hidden: boolean;
}

/** Another value for a reading, with the reason; one that is still blind is corrected without being shown. */
export function CorrectForm({ plan, record, enter }: CorrectFormProps) {
  const t = useTranslations('bay');
  const to = useSpeech();
  const [told, setTold] = useState<string | null>(null);
  const all = record.setups
    .flatMap((setup): Correctable[] => {
      const place = placeOf(plan, setup.place);
      const hidden = place !== null && isHidden(record, place, setup);
      return [...setup.readings.values()].map((reading) => ({ setup, reading, hidden }));
    })
    .sort((a, b) => b.reading.at - a.reading.at);
  if (all.length === 0) return <p>{t('correct.none')}</p>;

  const submit = async (event: SubmitEvent<HTMLFormElement>) => {
    event.preventDefault();
    const form = event.currentTarget;
    const fields = new FormData(form);
    const text = (name: string) => {
      const value = fields.get(name);
      return typeof value === 'string' ? value.trim() : '';
    };
    const one = all.find((found) => keyOf(found) === text('which'));
    const [value] = typedLengths(text('value'), to.units) ?? [];
    const reason = text('reason');
    if (one === undefined || value === undefined || reason === '') return setTold(t('correct.needs'));
    const { dimension, repeat, value: from } = one.reading;
    await enter([
      {
        kind: 'correct',
        setup: one.setup.label,
        dimension,
        repeat,
        from,
        reason,
        value: withoutRoundingNoise(value),
      },
    ]);
    form.reset();
    setTold(t('correct.done'));
    backToNow();
  };

  return (
    <form className={styles.fields} data-typing onSubmit={(event) => void submit(event)} noValidate>
      <div className={styles.field}>
        <label htmlFor="which">{t('correct.which')}</label>
        <select id="which" name="which">
          {all.map((one) => (
            <option key={keyOf(one)} value={keyOf(one)}>
              {optionText(one)}
            </option>
          ))}
        </select>
      </div>
      <div className={styles.field}>
        <label htmlFor="corrected">{t('correct.value', { unit: unit(to) })}</label>
        <input id="corrected" name="value" inputMode="decimal" maxLength={40} autoComplete="off" />
      </div>
      <div className={styles.field}>
        <label htmlFor="correct-reason">{t('correct.reason')}</label>
        <input
          id="correct-reason"
          name="reason"
          maxLength={200}
          autoComplete="off"
          placeholder={t('correct.reasonExample')}
        />
      </div>
      <button type="submit" className={button.button}>
        {t('correct.do')}
      </button>
      <p role="status">{told}</p>
    </form>
  );

  function optionText({ setup, reading, hidden }: Correctable): string {
    const { dimension, repeat } = reading;
    const value = hidden ? t('correct.hidden') : bareMillimetres(reading.value, 1, to);
    const common = { name: dimensionText(t, dimension), gauge: setup.gauge, value };
    return (placeOf(plan, setup.place)?.readings ?? 1) > 1
      ? t('correct.optionRepeat', { ...common, repeat })
      : t('correct.option', common);
  }
}

const keyOf = ({ setup, reading: { dimension, repeat } }: Correctable): string =>
  [setup.label, dimension.quantity, dimension.point, dimension.side, dimension.nominal, repeat].join(' ');
