import button from '@/app/_look/button.module.css';
import { Field } from '@/app/_look/field';
import form from '@/app/_look/form.module.css';
import prose from '@/app/_look/prose.module.css';
import { Table } from '@/app/_look/table';
import { dayAndTime } from '@/app/_words/times';
import { REPORT_EVERY, REPORTS_KEPT, type ReportPlan, type ScheduledReport } from '@/lib/access';
import { words } from '@/app/_words/words';
import { told } from '@/app/_words/told';

const HOURS = Array.from({ length: 24 }, (_, hour) => hour);
const clock = (hour: number) => `${String(hour).padStart(2, '0')}:00`;

interface ReportScheduleProps {
  plan: ReportPlan;
  timeZone: string;
}

/** When the batch report makes itself, and the ones that it made. Plain forms, so that they work without scripts. */
export function ReportSchedule({ plan: { schedule, next, reports }, timeZone }: ReportScheduleProps) {
  const t = words('settings');
  return (
    <>
      <div className={prose.prose}>
        <p>
          {schedule === null || next === null
            ? t('report.none')
            : t('report.now', {
                every: t(`report.every.${schedule.every}`),
                hour: clock(schedule.hour),
                timeZone,
                next: dayAndTime(next, timeZone),
              })}{' '}
          {t('report.missed')}
        </p>
      </div>
      <form className={form.form} action="/settings/schedule" method="post">
        <Field label={t('report.make')} id="every">
          <select id="every" name="every" defaultValue={schedule?.every ?? 'never'}>
            <option value="never">{t('report.every.never')}</option>
            {REPORT_EVERY.map((every) => (
              <option key={every} value={every}>
                {t(`report.every.${every}`)}
              </option>
            ))}
          </select>
        </Field>
        <Field label={t('report.hour', { timeZone })} id="hour">
          <select id="hour" name="hour" defaultValue={schedule?.hour ?? 6}>
            {HOURS.map((hour) => (
              <option key={hour} value={hour}>
                {clock(hour)}
              </option>
            ))}
          </select>
        </Field>
        <button type="submit" className={button.strong}>
          {t('report.setIt')}
        </button>
      </form>
      <Table
        caption={t('report.caption', { kept: REPORTS_KEPT })}
        rows={reports}
        rowKey={({ id }) => String(id)}
        empty={t('report.noneYet')}
        columns={[
          { key: 'due', head: t('report.of'), names: true, cell: ({ dueAt }) => dayAndTime(dueAt, timeZone) },
          { key: 'came', head: t('report.came'), cell: whatCame },
        ]}
      />
    </>
  );
}

function whatCame({ id, doneAt, failed }: ScheduledReport) {
  if (failed !== null) return told(failed);
  const t = words('settings');
  if (doneAt === null) return t('report.atWork');
  return (
    <a href={`/settings/schedule/report/${id}`} download>
      {t('report.download')}
    </a>
  );
}
