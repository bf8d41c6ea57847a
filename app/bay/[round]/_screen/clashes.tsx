import type { SubmitEvent } from 'react';
import { useTranslations } from 'use-intl/react';
import button from '@/app/_look/button.module.css';
import { Note } from '@/app/_look/note';
import { settingText, dimensionText, whyText } from './names';
import { useSpeech } from '@/app/_words/speech/device';
import {
  isHidden,
  placeOf,
  type BayRecord,
  type Contradiction,
  type EntryBody,
  type PlannedStep,
} from '@/lib/bay';
import { backToNow } from './use-focus';
import styles from './prompt.module.css';

interface ClashesProps {
  plan: readonly PlannedStep[];
  record: BayRecord;
  enter: (bodies: EntryBody[]) => Promise<void>;
}

/** Readings with two values: both are shown, and somebody says which counts. */
export function Clashes({ plan, record, enter }: ClashesProps) {
  const t = useTranslations('bay');
  if (record.contradictions.length === 0) return null;
  return (
    <Note kind="fault" live>
      <h2>{t('clash.title')}</h2>
      {record.contradictions.map((one) =>
        isBlind(one) ? (
          <p key={one.key}>{t('clash.blind')}</p>
        ) : (
          <Clash key={one.key} one={one} enter={enter} />
        ),
      )}
    </Note>
  );

  function isBlind({ setup: label }: Contradiction): boolean {
    const setup = record.setups.find((one) => one.label === label);
    const place = setup === undefined ? null : placeOf(plan, setup.place);
    return setup !== undefined && place !== null && isHidden(record, place, setup);
  }
}

function Clash({ one, enter }: { one: Contradiction; enter: ClashesProps['enter'] }) {
  const t = useTranslations('bay');
  const to = useSpeech();
  const { key, dimension, repeat, first, second, why } = one;
  const id = `clash-${key}`;
  const submit = (event: SubmitEvent<HTMLFormElement>) => {
    event.preventDefault();
    const fields = new FormData(event.currentTarget);
    const given = fields.get('reason');
    const reason = typeof given === 'string' ? given.trim() : '';
    const keep = fields.get('keep') === 'second' ? 'second' : 'first';
    void enter([{ kind: 'settle', key, keep, reason: reason === '' ? t('clash.title') : reason }]).then(
      backToNow,
    );
  };
  return (
    <form className={styles.fields} data-typing onSubmit={submit}>
      <p>
        {first === second
          ? `${dimensionText(t, dimension)}: ${whyText(t, why)}`
          : t('clash.ask', {
              name: dimensionText(t, dimension),
              repeat,
              first: settingText(first, to),
              second: settingText(second, to),
            })}
      </p>
      <fieldset className={styles.choices}>
        <legend className="out-of-sight">{t('clash.title')}</legend>
        <label>
          <input type="radio" name="keep" value="first" defaultChecked />
          {t('clash.first', { value: settingText(first, to) })}
        </label>
        <label>
          <input type="radio" name="keep" value="second" />
          {t('clash.second', { value: settingText(second, to) })}
        </label>
      </fieldset>
      <div className={styles.field}>
        <label htmlFor={id}>{t('clash.reason')}</label>
        <input id={id} name="reason" maxLength={300} autoComplete="off" />
      </div>
      <button type="submit" className={button.button}>
        {t('clash.do')}
      </button>
    </form>
  );
}
