import Link from 'next/link';
import { MonthFields } from '@/app/_figures/stretch/month-fields';
import button from '@/app/_look/button.module.css';
import { Choice } from '@/app/_look/choice';
import styles from '@/app/_look/filter-form.module.css';
import { sectionName } from '@/app/_words/jobs';
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
export function SpanForm({ to, question, choices, gauges }: SpanFormProps) {
  const plain = (names: readonly string[]) => names.map((name) => [name, name] as const);
  return (
    <form
      className={styles.form}
      action={`${to}#span`}
      method="get"
      role="search"
      aria-label="Which part of the work"
      data-print="no"
    >
      <MonthFields asked={question} months={choices.months} />
      <Choice name="gauge" label="Gauge" any="any" value={question.gauge} choices={plain(gauges)} />
      <Choice name="sheet" label="Sheet" any="any" value={question.sheet} choices={plain(choices.sheets)} />
      <Choice
        name="section"
        label="Section"
        any="the whole vehicle"
        value={question.section}
        choices={SECTIONS.map((section) => [section, sectionName(section)] as const)}
      />
      <div className={styles.buttons}>
        <button type="submit" className={button.strong}>
          Show
        </button>
        <Link href={`${to}#span`} className={button.button}>
          Show all
        </Link>
      </div>
    </form>
  );
}
