import button from '@/app/_look/button.module.css';
import { Field } from '@/app/_look/field';
import form from '@/app/_look/form.module.css';
import prose from '@/app/_look/prose.module.css';
import { Table } from '@/app/_look/table';
import { dayAndTime } from '@/app/_words/times';
import {
  REPORT_EVERY,
  REPORTS_KEPT,
  type ReportEvery,
  type ReportPlan,
  type ScheduledReport,
} from '@/lib/access';

const EVERY: Record<ReportEvery, string> = {
  day: 'every day',
  week: 'every Monday',
  month: 'on the first of the month',
};
const HOURS = Array.from({ length: 24 }, (_, hour) => hour);
const clock = (hour: number) => `${String(hour).padStart(2, '0')}:00`;

interface ReportScheduleProps {
  plan: ReportPlan;
  timeZone: string;
}

/** When the batch report makes itself, and the ones that it made. Plain forms, so that they work without scripts. */
export function ReportSchedule({ plan: { schedule, next, reports }, timeZone }: ReportScheduleProps) {
  return (
    <>
      <div className={prose.prose}>
        <p>
          {schedule === null || next === null
            ? 'No report makes itself.'
            : `Now: ${EVERY[schedule.every]} at ${clock(schedule.hour)} (${timeZone}); next on ${dayAndTime(next, timeZone)}.`}{' '}
          A time that is missed while the program does not run is made up for once it does.
        </p>
      </div>
      <form className={form.form} action="/settings/schedule" method="post">
        <Field label="Make the report" id="every">
          <select id="every" name="every" defaultValue={schedule?.every ?? 'never'}>
            <option value="never">not by itself</option>
            {REPORT_EVERY.map((every) => (
              <option key={every} value={every}>
                {EVERY[every]}
              </option>
            ))}
          </select>
        </Field>
        <Field label={`At the hour (${timeZone})`} id="hour">
          <select id="hour" name="hour" defaultValue={schedule?.hour ?? 6}>
            {HOURS.map((hour) => (
              <option key={hour} value={hour}>
                {clock(hour)}
              </option>
            ))}
          </select>
        </Field>
        <button type="submit" className={button.strong}>
          Set it
        </button>
      </form>
      <Table
        caption={`Reports that made themselves, newest first (${REPORTS_KEPT} are kept)`}
        rows={reports}
        rowKey={({ id }) => String(id)}
        empty="There is none yet."
        columns={[
          { key: 'due', head: 'Of', names: true, cell: ({ dueAt }) => dayAndTime(dueAt, timeZone) },
          { key: 'came', head: 'What came of it', cell: whatCame },
        ]}
      />
    </>
  );
}

function whatCame({ id, doneAt, failed }: ScheduledReport) {
  if (failed !== null) return failed;
  if (doneAt === null) return 'It is being made.';
  return (
    <a href={`/settings/schedule/report/${id}`} download>
      Download (JSON)
    </a>
  );
}
