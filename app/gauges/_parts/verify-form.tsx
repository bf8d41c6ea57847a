import button from '@/app/_look/button.module.css';
import { Field } from '@/app/_look/field';
import form from '@/app/_look/form.module.css';
import { gaugeAddress } from '@/app/_words/address';
import { LEAST_READINGS } from '@/lib/access';
import { bareMillimetres, briefMillimetres, unit } from '@/app/_words/numbers';
import { words } from '@/app/_words/words';

/** A verification against something whose length is known. */
export function VerifyForm({ gauge, allowed }: { gauge: string; allowed: number }) {
  const t = words('gauges');
  return (
    <form className={form.form} action={`${gaugeAddress(gauge)}/verify`} method="post">
      <p className={form.hint}>
        {t('verify.hint', { least: LEAST_READINGS, allowed: briefMillimetres(allowed) })}
      </p>
      <Field label={t('verify.against')} id="kind">
        <select id="kind" name="kind">
          <option value="reference-length">{t('verify.referenceLength')}</option>
          <option value="check-standard">{t('verify.checkStandard')}</option>
        </select>
      </Field>
      <Field label={t('verify.length', { unit: unit() })} id="reference">
        <input
          id="reference"
          name="reference"
          required
          inputMode="decimal"
          maxLength={12}
          autoComplete="off"
        />
      </Field>
      <Field label={t('verify.uncertainty', { unit: unit() })} id="uncertainty">
        <input
          id="uncertainty"
          name="uncertainty"
          required
          inputMode="decimal"
          maxLength={12}
          autoComplete="off"
          defaultValue={bareMillimetres(0.05, 2)}
        />
      </Field>
      <Field label={t('verify.readings', { unit: unit() })} id="readings">
        <input id="readings" name="readings" required maxLength={200} autoComplete="off" />
      </Field>
      <Field label={t('verify.note')} id="verify-note">
        <input id="verify-note" name="note" maxLength={200} autoComplete="off" />
      </Field>
      <button type="submit" className={button.strong}>
        {t('verify.record')}
      </button>
    </form>
  );
}

/** The state judged by looking: it can take a gauge out of service, never bring it back. */
export function LookForm({ gauge }: { gauge: string }) {
  const t = words('gauges');
  return (
    <form className={form.form} action={`${gaugeAddress(gauge)}/look`} method="post">
      <p className={form.hint}>{t('look.hint')}</p>
      <Field label={t('look.looks')} id="looks">
        <select id="looks" name="looks">
          <option value="as-ever">{t('look.asEver')}</option>
          <option value="bent">{t('look.bent')}</option>
        </select>
      </Field>
      <Field label={t('look.note')} id="look-note">
        <input id="look-note" name="note" maxLength={200} autoComplete="off" />
      </Field>
      <button type="submit" className={button.button}>
        {t('look.record')}
      </button>
    </form>
  );
}

/** For everybody: whoever sees it fall says so. */
export function DroppedForm({ gauge }: { gauge: string }) {
  const t = words('gauges');
  return (
    <form className={form.form} action={`${gaugeAddress(gauge)}/dropped`} method="post">
      <Field label={t('dropped.what')} id="dropped-note">
        <input id="dropped-note" name="note" maxLength={200} autoComplete="off" />
      </Field>
      <button type="submit" className={button.button}>
        {t('dropped.report', { gauge })}
      </button>
    </form>
  );
}
