import { useState } from 'react';
import { useTranslations } from 'use-intl/react';
import { unit } from '@/app/_words/numbers';
import { useSpeech } from '@/app/_words/speech/device';
import { typedLengths } from '@/lib/bay/typed';
import { LengthField } from './field';
import styles from './helper.module.css';

interface SumProps {
  title: string;
  /** What is filled in, with what stands there first. */
  fields: readonly (readonly [label: string, first: string])[];
  /** The answer in a sentence, from the lengths in mm. */
  answer: (lengths: number[]) => string;
}

/** A few lengths, and what follows from them, at once. */
export function Sum({ title, fields, answer }: SumProps) {
  const t = useTranslations('bay');
  const to = useSpeech();
  const [texts, setTexts] = useState(fields.map(([, first]) => first));
  const lengths = texts.map((text) => typedLengths(text, to.units) ?? []);
  const whole = lengths.every(({ length }) => length === 1);
  return (
    <section className={styles.sum}>
      <h2>{title}</h2>
      <div className={styles.fields}>
        {fields.map(([label], at) => (
          <LengthField
            key={label}
            label={`${label}, ${unit(to)}`}
            value={texts[at] ?? ''}
            change={(value) => setTexts(texts.map((text, index) => (index === at ? value : text)))}
          />
        ))}
      </div>
      <p className={styles.answer} aria-live="polite">
        {whole ? answer(lengths.flat()) : <span>{t('helper.fill')}</span>}
      </p>
    </section>
  );
}
