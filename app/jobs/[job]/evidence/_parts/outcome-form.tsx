import button from '@/app/_look/button.module.css';
import { Field } from '@/app/_look/field';
import { sideName } from '@/app/_words/dimensions';
import { jobAddress } from '@/app/_words/address';
import { CAUSES, type Cause, type Round } from '@/lib/measure';
import { NOTE_LENGTH, whichHeight } from '../outcome/what-was-said';
import styles from './outcome.module.css';

/** What a re-check can show, said as a statement about the first reading. */
const CHOICES: Record<Cause, string> = {
  gauge: 'The gauge: hung again, the height came out within tolerance',
  body: 'The body: hung again, the height read the same',
  both: 'Both: hung again, the height changed and is still out',
  neither: 'Neither: both readings are within tolerance',
};

/** Says what a re-check showed of one height. A plain form, so that it works without scripts. */
export function OutcomeForm({ round, by }: { round: Round; by: string }) {
  const heights = round.setups.flatMap((setup) =>
    setup.observations.flatMap(({ quantity, point, side }) =>
      quantity === 'height' && side !== null ? [{ setup, point, side }] : [],
    ),
  );
  return (
    <form className={styles.form} action={`${jobAddress(round.job)}/evidence/outcome`} method="post">
      <input type="hidden" name="round" value={`${round.stage}-${round.attempt}`} />
      <Field label="Which height" id="outcome-height">
        <select id="outcome-height" name="height" required defaultValue="">
          <option value="" disabled>
            choose
          </option>
          {heights.map(({ setup, point, side }) => (
            <option key={`${setup.label} ${point} ${side}`} value={whichHeight(setup.label, side)}>
              {point} {sideName(side)}, setup {setup.label}, {setup.gauge}
            </option>
          ))}
        </select>
      </Field>
      <fieldset className={styles.causes}>
        <legend>What was off in the first reading</legend>
        {[...CAUSES].reverse().map((cause) => (
          <label key={cause}>
            <input type="radio" name="cause" value={cause} required />
            {CHOICES[cause]}
          </label>
        ))}
      </fieldset>
      <Field label="Note (not needed)" id="outcome-note">
        <input id="outcome-note" name="note" maxLength={NOTE_LENGTH} autoComplete="off" />
      </Field>
      <p>It is recorded in your name, {by}.</p>
      <button type="submit" className={button.strong}>
        Record what the re-check showed
      </button>
    </form>
  );
}
