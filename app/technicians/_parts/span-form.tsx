import Link from 'next/link';
import button from '@/app/_look/button.module.css';
import { Field } from '@/app/_look/field';
import type { Span } from './span';
import styles from './span-form.module.css';

interface SpanFormProps {
  /** The page that is asked. */
  to: string;
  span: Span;
  gauges: readonly string[];
}

/** Asks by address (GET), so that it can be bookmarked and works without a script. */
export function SpanForm({ to, span, gauges }: SpanFormProps) {
  return (
    <form
      className={styles.form}
      action={to}
      method="get"
      role="search"
      aria-label="Time and gauge"
      data-print="no"
    >
      <Field label="Hung from" id="from">
        <input id="from" name="from" type="date" defaultValue={span.from} />
      </Field>
      <Field label="Hung until" id="to">
        <input id="to" name="to" type="date" defaultValue={span.to} />
      </Field>
      <Field label="Gauge" id="gauge">
        <select id="gauge" name="gauge" defaultValue={span.gauge ?? ''}>
          <option value="">any</option>
          {gauges.map((gauge) => (
            <option key={gauge}>{gauge}</option>
          ))}
        </select>
      </Field>
      <div className={styles.buttons}>
        <button type="submit" className={button.strong}>
          Show
        </button>
        <Link href={to} className={button.button}>
          Show all
        </Link>
      </div>
    </form>
  );
}
