import { useId, useState } from 'react';
import { useTranslations } from 'use-intl/react';
import { millimetres } from '@/app/_words/numbers';
import { useSpeech } from '@/app/_words/speech/device';
import { typedLengths } from '@/lib/bay/typed';
import { pointersExplaining } from '@/lib/measure/trade';
import styles from './helper.module.css';

/** Standard uncertainty of one length, mm: setting about 1, reading again half of it. Source: common practice. */
const LENGTH_SD = 1.1;

/** Which difference of the pointers explains several lengths that read too long. */
export function Explaining() {
  const t = useTranslations('bay');
  const to = useSpeech();
  const id = useId();
  const [text, setText] = useState('');
  const lines = text.split('\n').flatMap((line, at) => (line.trim() === '' ? [] : [{ line, at }]));
  const pairs = lines.map(({ line, at }) => ({ at, lengths: typedLengths(line, to.units) ?? [] }));
  const bad = pairs.find(({ lengths }) => lengths.length !== 2);
  return (
    <section className={styles.sum}>
      <h2>{t('helper.explains')}</h2>
      <p id={`${id}-how`}>{t('helper.lengthsHow')}</p>
      <div className={styles.field}>
        <label htmlFor={id}>{t('helper.lengths')}</label>
        <textarea
          id={id}
          rows={4}
          maxLength={2000}
          aria-describedby={`${id}-how`}
          placeholder={to.units === 'mm' ? '1452 1454.5\n820 824' : '57.2 57.3\n32.3 32.5'}
          value={text}
          onChange={(event) => setText(event.target.value)}
        />
      </div>
      <div className={styles.answer} aria-live="polite">
        {answer()}
      </div>
    </section>
  );

  function answer() {
    if (bad !== undefined) return <p>{t('helper.badLine', { line: bad.at + 1 })}</p>;
    const read = pairs.map(({ lengths: [nominal = 0, value = 0] }) => ({
      nominal,
      deviation: value - nominal,
    }));
    const found = pointersExplaining(read, LENGTH_SD);
    if (found === null)
      return (
        <p>
          <span>{t('helper.fill')}</span>
        </p>
      );
    const of = (value: number) => millimetres(value, 0, to);
    return (
      <>
        <p>
          {found.difference === 0
            ? t('helper.foundNone', { high: of(found.high) })
            : t('helper.found', {
                difference: of(found.difference),
                low: of(found.low),
                high: of(found.high),
                left: millimetres(found.left, 1, to),
                sd: millimetres(LENGTH_SD, 1, to),
              })}
        </p>
        <p className={styles.small}>{t('helper.foundWhy')}</p>
      </>
    );
  }
}
