import { drawnOnce } from '@/app/_look/still';
import Link from 'next/link';
import { MonthFields } from '@/app/_figures/stretch/month-fields';
import button from '@/app/_look/button.module.css';
import { Choice } from '@/app/_look/choice';
import styles from '@/app/_look/filter-form.module.css';
import { sectionName } from '@/app/_words/jobs';
import { words } from '@/app/_words/words';
import type { SpanChoices } from '@/lib/assess/answers';
import { SECTIONS } from '@/lib/measure';
import type { HandQuestion } from './hand-question';

interface SpanFormProps {
  /** The page that is asked. */
  to: string;
  question: HandQuestion;
  choices: SpanChoices;
  gauges: readonly string[];
}

/** Asks by address (GET), so that it can be bookmarked and works without a script. */
export const SpanForm = drawnOnce(function SpanForm({ to, question, choices, gauges }: SpanFormProps) {
  const t = words('hand');
  const plain = (names: readonly string[]) => names.map((name) => [name, name] as const);
  return (
    <form
      className={styles.form}
      action={`${to}#span`}
      method="get"
      role="search"
      aria-label={t('span.name')}
      data-print="no"
    >
      <MonthFields asked={question} months={choices.months} />
      <Choice
        name="gauge"
        label={t('span.gauge')}
        any={t('span.any')}
        value={question.gauge}
        choices={plain(gauges)}
      />
      <Choice
        name="sheet"
        label={t('span.sheet')}
        any={t('span.any')}
        value={question.sheet}
        choices={plain(choices.sheets)}
      />
      <Choice
        name="section"
        label={t('span.section')}
        any={t('span.whole')}
        value={question.section}
        choices={SECTIONS.map((section) => [section, sectionName(section)] as const)}
      />
      <div className={styles.buttons}>
        <button type="submit" className={button.strong}>
          {t('span.show')}
        </button>
        <Link href={`${to}#span`} className={button.button}>
          {t('span.showAll')}
        </Link>
      </div>
    </form>
  );
});
