import button from '@/app/_look/button.module.css';
import { Field } from '@/app/_look/field';
import form from '@/app/_look/form.module.css';
import { gaugeAddress } from '@/app/_words/address';
import { LEAST_READINGS } from '@/lib/access';

/** A verification against something whose length is known. */
export function VerifyForm({ gauge, allowed }: { gauge: string; allowed: number }) {
  return (
    <form className={form.form} action={`${gaugeAddress(gauge)}/verify`} method="post">
      <p className={form.hint}>
        Read at least {LEAST_READINGS} times, the gauge taken off between. It passes where its error is within
        ± {allowed} mm with 95 % certainty, the uncertainty of the readings and of the reference counted in.
      </p>
      <Field label="Held against" id="kind">
        <select id="kind" name="kind">
          <option value="reference-length">a reference length</option>
          <option value="check-standard">a check standard</option>
        </select>
      </Field>
      <Field label="Its length, mm" id="reference">
        <input
          id="reference"
          name="reference"
          required
          inputMode="decimal"
          maxLength={12}
          autoComplete="off"
        />
      </Field>
      <Field label="Standard uncertainty of that length, mm" id="uncertainty">
        <input
          id="uncertainty"
          name="uncertainty"
          required
          inputMode="decimal"
          maxLength={12}
          autoComplete="off"
          defaultValue="0.05"
        />
      </Field>
      <Field label="What the gauge showed, mm, one space between readings" id="readings">
        <input id="readings" name="readings" required maxLength={200} autoComplete="off" />
      </Field>
      <Field label="Note (what was mended, which standard)" id="verify-note">
        <input id="verify-note" name="note" maxLength={200} autoComplete="off" />
      </Field>
      <button type="submit" className={button.strong}>
        Record the verification
      </button>
    </form>
  );
}

/** The state judged by looking: it can take a gauge out of service, never bring it back. */
export function LookForm({ gauge }: { gauge: string }) {
  return (
    <form className={form.form} action={`${gaugeAddress(gauge)}/look`} method="post">
      <p className={form.hint}>
        A look can take a gauge out of service. It never brings one back: that takes a measured error.
      </p>
      <Field label="It looks" id="looks">
        <select id="looks" name="looks">
          <option value="as-ever">as ever</option>
          <option value="bent">bent, loose or worn</option>
        </select>
      </Field>
      <Field label="Note" id="look-note">
        <input id="look-note" name="note" maxLength={200} autoComplete="off" />
      </Field>
      <button type="submit" className={button.button}>
        Record the look
      </button>
    </form>
  );
}

/** For everybody: whoever sees it fall says so. */
export function DroppedForm({ gauge }: { gauge: string }) {
  return (
    <form className={form.form} action={`${gaugeAddress(gauge)}/dropped`} method="post">
      <Field label="What happened" id="dropped-note">
        <input id="dropped-note" name="note" maxLength={200} autoComplete="off" />
      </Field>
      <button type="submit" className={button.button}>
        Report {gauge} dropped: out of service until verified
      </button>
    </form>
  );
}
