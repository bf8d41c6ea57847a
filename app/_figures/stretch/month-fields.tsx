import { Choice } from '@/app/_look/choice';
import { monthName } from '@/app/_words/times';
import { LAST_MONTHS, type AskedMonths } from './asked-months';

interface MonthFieldsProps {
  asked: AskedMonths;
  /** Those on record, in their order. */
  months: readonly string[];
}

/** The time that figures are held to: the newest months, or from one month to another. */
export function MonthFields({ asked, months }: MonthFieldsProps) {
  const choices = months.map((month) => [month, monthName(month)] as const);
  return (
    <>
      <Choice
        name="last"
        label="Newest months"
        any="by the months beside"
        value={asked.last}
        choices={LAST_MONTHS.map((count) => [count, `the last ${count} months`] as const)}
      />
      <Choice name="from" label="From month" any="the first" value={asked.from} choices={choices} />
      <Choice name="to" label="Until month" any="the last" value={asked.to} choices={choices} />
    </>
  );
}
