import button from '@/app/_look/button.module.css';
import { Field } from '@/app/_look/field';
import { briefMillimetres, unit } from '@/app/_words/numbers';
import { words } from '@/app/_words/words';
import type { Person } from '@/lib/access';
import { personField, POINT_ROWS, type PlanFields } from './plan-fields';
import styles from './plan-form.module.css';

interface PlanFormProps {
  fields: PlanFields;
  people: Person[];
  /** Where a point states none, mm. */
  tolerance: number;
}

/** Sent with GET it works out what the plan finds; the button that creates it stands with that answer. */
export function PlanForm({ fields, people, tolerance }: PlanFormProps) {
  const t = words('trials');
  return (
    <form id="plan" className={styles.form} action="/trials/new" method="get">
      <div className={styles.name}>
        <Field label={t('plan.name')} id="name">
          <input
            id="name"
            name="name"
            required
            maxLength={80}
            autoComplete="off"
            defaultValue={fields.name}
          />
        </Field>
      </div>
      <fieldset className={styles.part}>
        <legend>{t('plan.asked')}</legend>
        {QUESTIONS.map(({ question, size }) => (
          <div key={question} className={styles.question}>
            <label className={styles.choice}>
              <input type="radio" name="asked" value={question} defaultChecked={fields.asked === question} />
              {t(`plan.questions.${question}.text`)}
            </label>
            <label className={styles.size}>
              {t(`plan.questions.${question}.before`)}
              <input name={size} inputMode="decimal" autoComplete="off" defaultValue={fields[size]} />
              {question === 'bias' ? unit() : t(`plan.questions.${question}.after`)}
            </label>
          </div>
        ))}
      </fieldset>
      <fieldset className={styles.part}>
        <legend>{t('plan.points')}</legend>
        <p className={styles.hint}>{t('plan.pointsHint', { tolerance: briefMillimetres(tolerance) })}</p>
        <div className={styles.points}>
          <span aria-hidden="true">{t('plan.point')}</span>
          <span aria-hidden="true">{t('plan.onSheet', { unit: unit() })}</span>
          <span aria-hidden="true">{t('plan.tolerance', { unit: unit() })}</span>
          {POINT_ROWS.flatMap((row) =>
            COLUMNS.map(({ name, mode }) => (
              <input
                key={`${name} ${row}`}
                name={`${name} ${row}`}
                aria-label={t(`plan.${name}Label`, { row, unit: unit() })}
                inputMode={mode}
                maxLength={name === 'point' ? 80 : 12}
                autoComplete="off"
                defaultValue={fields[`${name} ${row}`]}
              />
            )),
          )}
        </div>
      </fieldset>
      <fieldset className={styles.part}>
        <legend>{t('plan.who')}</legend>
        <div className={styles.people}>
          {people.map(({ code, name }) => (
            <label key={code} className={styles.choice}>
              <input
                type="checkbox"
                name={personField(code)}
                value="yes"
                defaultChecked={fields[personField(code)] !== undefined}
              />
              {name === '' ? code : t('plan.person', { code, name })}
            </label>
          ))}
        </div>
      </fieldset>
      <fieldset className={styles.part}>
        <legend>{t('plan.often')}</legend>
        <div className={styles.numbers}>
          <Field label={t('plan.setups')} id="setups">
            <input id="setups" name="setups" inputMode="numeric" required defaultValue={fields.setups} />
          </Field>
          <Field label={t('plan.readings')} id="readings">
            <input
              id="readings"
              name="readings"
              inputMode="numeric"
              required
              defaultValue={fields.readings}
            />
          </Field>
        </div>
      </fieldset>
      <div>
        <button type="submit" className={button.strong}>
          {t('plan.weigh')}
        </button>
      </div>
    </form>
  );
}

const QUESTIONS = [
  { question: 'bias', size: 'difference' },
  { question: 'repeatability', size: 'repeatability' },
  { question: 'setting', size: 'setting' },
  { question: 'training', size: 'training' },
] as const;

const COLUMNS = [
  { name: 'point', mode: 'text' },
  { name: 'value', mode: 'decimal' },
  { name: 'tolerance', mode: 'decimal' },
] as const;
