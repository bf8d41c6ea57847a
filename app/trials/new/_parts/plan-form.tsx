import button from '@/app/_look/button.module.css';
import { Field } from '@/app/_look/field';
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
  return (
    <form id="plan" className={styles.form} action="/trials/new" method="get">
      <div className={styles.name}>
        <Field label="Name of the trial" id="name">
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
        <legend>What it is to find out</legend>
        {QUESTIONS.map(({ question, text, size, before, after }) => (
          <div key={question} className={styles.question}>
            <label className={styles.choice}>
              <input type="radio" name="asked" value={question} defaultChecked={fields.asked === question} />
              {text}
            </label>
            <label className={styles.size}>
              {before}
              <input name={size} inputMode="decimal" autoComplete="off" defaultValue={fields[size]} />
              {after}
            </label>
          </div>
        ))}
      </fieldset>
      <fieldset className={styles.part}>
        <legend>Points</legend>
        <p className={styles.hint}>
          One line a point and side, with its value on the sheet, clearance included where the readings will
          hold it. Whoever reads sees the name alone. Without a tolerance ± {tolerance} mm counts.
        </p>
        <div className={styles.points}>
          <span aria-hidden="true">Point</span>
          <span aria-hidden="true">On the sheet, mm</span>
          <span aria-hidden="true">Tolerance ±, mm</span>
          {POINT_ROWS.flatMap((row) =>
            COLUMNS.map(({ name, label, mode }) => (
              <input
                key={`${name} ${row}`}
                name={`${name} ${row}`}
                aria-label={`${label} ${row}`}
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
        <legend>Who takes part</legend>
        <div className={styles.people}>
          {people.map(({ code, name }) => (
            <label key={code} className={styles.choice}>
              <input
                type="checkbox"
                name={personField(code)}
                value="yes"
                defaultChecked={fields[personField(code)] !== undefined}
              />
              {name === '' ? code : `${code}, ${name}`}
            </label>
          ))}
        </div>
      </fieldset>
      <fieldset className={styles.part}>
        <legend>How often</legend>
        <div className={styles.numbers}>
          <Field label="Hangings of each person at each point" id="setups">
            <input id="setups" name="setups" inputMode="numeric" required defaultValue={fields.setups} />
          </Field>
          <Field label="Readings of a hanging, gauge untouched" id="readings">
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
          Work out what it finds
        </button>
      </div>
    </form>
  );
}

const QUESTIONS = [
  {
    question: 'bias',
    text: 'Do two technicians read differently?',
    size: 'difference',
    before: 'find a bias of',
    after: 'mm',
  },
  {
    question: 'repeatability',
    text: 'How much does reading again scatter?',
    size: 'repeatability',
    before: 'know it to within',
    after: 'times',
  },
  {
    question: 'setting',
    text: 'How much does setting and hanging scatter?',
    size: 'setting',
    before: 'know it to within',
    after: 'times',
  },
  {
    question: 'training',
    text: 'Did a training help? (run before, and again after)',
    size: 'training',
    before: 'scatter falls to',
    after: '%',
  },
] as const;

const COLUMNS = [
  { name: 'point', label: 'Name of point', mode: 'text' },
  { name: 'value', label: 'Sheet value in mm of point', mode: 'decimal' },
  { name: 'tolerance', label: 'Tolerance in mm of point', mode: 'decimal' },
] as const;
