import button from '@/app/_look/button.module.css';
import { Field } from '@/app/_look/field';
import filter from '@/app/_look/filter-form.module.css';
import { unit } from '@/app/_words/numbers';
import { speech } from '@/app/_words/speech';
import { words } from '@/app/_words/words';
import { STAGES } from '@/lib/measure/types';

/** The round number by which bars clear most vehicles, by the unit. Source: common practice. */
const USUAL_CLEARANCE = { mm: '100', in: '4' } as const;

interface BeginFormProps {
  sheets: readonly string[];
  /** The one that is chosen already, if it is among them. */
  sheet: string | undefined;
}

/** Which vehicle, against which sheet: a plain form. */
export function BeginForm({ sheets, sheet }: BeginFormProps) {
  const t = words('bay');
  return (
    <form className={filter.form} action="/bay/begin" method="post">
      <Field label={t('begin.job')} id="job">
        <input id="job" name="job" required maxLength={60} autoComplete="off" autoCapitalize="characters" />
      </Field>
      <Field label={t('begin.sheet')} id="sheet">
        <select id="sheet" name="sheet" required defaultValue={sheets.find((name) => name === sheet) ?? ''}>
          <option value="" disabled>
            {t('begin.chooseSheet')}
          </option>
          {sheets.map((name) => (
            <option key={name}>{name}</option>
          ))}
        </select>
      </Field>
      <Field label={t('begin.stage')} id="stage">
        <select id="stage" name="stage" defaultValue="before">
          {STAGES.map((stage) => (
            <option key={stage} value={stage}>
              {t(`stages.${stage}`)}
            </option>
          ))}
        </select>
      </Field>
      <Field label={t('begin.attempt')} id="attempt">
        <input id="attempt" name="attempt" required inputMode="numeric" maxLength={2} defaultValue="1" />
      </Field>
      <Field label={t('begin.clearance', { unit: unit() })} id="clearance">
        <input
          id="clearance"
          name="clearance"
          required
          inputMode="decimal"
          maxLength={10}
          autoComplete="off"
          defaultValue={USUAL_CLEARANCE[speech().units]}
        />
      </Field>
      <div className={filter.buttons}>
        <button type="submit" className={button.strong}>
          {t('begin.do')}
        </button>
      </div>
    </form>
  );
}
