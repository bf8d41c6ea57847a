import button from '@/app/_look/button.module.css';
import { Field } from '@/app/_look/field';
import form from '@/app/_look/form.module.css';
import { jobAddress } from '@/app/_words/address';
import { dimensionName } from '@/app/_words/dimensions';
import { bareMillimetres } from '@/app/_words/numbers';
import type { ReadingRevision } from '@/lib/access';
import { REASON_LENGTH, whichReading } from '../revise/form';
import { sameReading } from './revision-table';

/** A plain form, so that it works without scripts. */
export function ReviseForm({ history }: { history: ReadingRevision[] }) {
  const [first] = history;
  if (first === undefined) return null;
  const latest = history.filter(
    (one) => !history.some((other) => sameReading(one, other) && other.revision > one.revision),
  );
  return (
    <form className={form.form} action={`${jobAddress(first.job)}/readings/revise`} method="post">
      <Field label="Which reading" id="reading">
        <select id="reading" name="reading" required defaultValue="">
          <option value="" disabled>
            choose
          </option>
          {latest.map((one) => (
            <option key={whichReading(one)} value={whichReading(one)}>
              {one.setup}, {dimensionName(one)}, reading {one.repeat}: {bareMillimetres(one.value)} mm
              {one.excluded && ', excluded'}
            </option>
          ))}
        </select>
      </Field>
      <Field label="What to do" id="what">
        <select id="what" name="what" required defaultValue="correct">
          <option value="correct">correct it to the value below</option>
          <option value="exclude">exclude it from every figure</option>
          <option value="include">let it count again</option>
        </select>
      </Field>
      <Field label="Right value, mm (to correct)" id="value">
        <input id="value" name="value" inputMode="decimal" maxLength={12} autoComplete="off" />
      </Field>
      <Field label="Why" id="reason">
        <input id="reason" name="reason" required maxLength={REASON_LENGTH} autoComplete="off" />
      </Field>
      <button type="submit" className={button.strong}>
        Do it, and keep the first value on record
      </button>
    </form>
  );
}
