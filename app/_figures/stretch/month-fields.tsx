import { Choice } from '@/app/_look/choice';
import { monthName } from '@/app/_words/times';
import { words } from '@/app/_words/words';
import { LAST_MONTHS, type AskedMonths } from './asked-months';

interface MonthFieldsProps {
  asked: AskedMonths;
  /** Those on record, in their order. */
  months: readonly string[];
}

/** The time that figures are held to: the newest months, or from one month to another. */
export function MonthFields({ asked, months }: MonthFieldsProps) {
  const t = words('figures');
  const choices = months.map((month) => [month, monthName(month)] as const);
  return (
    <>
      <Choice
        name="last"
        label={t('stretch.newest')}
        any={t('stretch.byMonths')}
        value={asked.last}
        choices={LAST_MONTHS.map((count) => [count, t('stretch.last', { n: count })] as const)}
      />
      <Choice
        name="from"
        label={t('stretch.from')}
        any={t('stretch.first')}
        value={asked.from}
        choices={choices}
      />
      <Choice
        name="to"
        label={t('stretch.until')}
        any={t('stretch.lastOne')}
        value={asked.to}
        choices={choices}
      />
    </>
  );
}
