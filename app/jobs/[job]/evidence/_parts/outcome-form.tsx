import button from '@/app/_look/button.module.css';
import { Field } from '@/app/_look/field';
import { sideName } from '@/app/_words/dimensions';
import { jobAddress } from '@/app/_words/address';
import { CAUSES, type Round } from '@/lib/measure';
import { NOTE_LENGTH, whichHeight } from '../outcome/what-was-said';
import styles from './outcome.module.css';
import { words } from '@/app/_words/words';

/** Says what a re-check showed of one height. A plain form, so that it works without scripts. */
export function OutcomeForm({ round, by }: { round: Round; by: string }) {
  const t = words('evidence');
  const heights = round.setups.flatMap((setup) =>
    setup.observations.flatMap(({ quantity, point, side }) =>
      quantity === 'height' && side !== null ? [{ setup, point, side }] : [],
    ),
  );
  return (
    <form className={styles.form} action={`${jobAddress(round.job)}/evidence/outcome`} method="post">
      <input type="hidden" name="round" value={`${round.stage}-${round.attempt}`} />
      <Field label={t('outcome.which')} id="outcome-height">
        <select id="outcome-height" name="height" required defaultValue="">
          <option value="" disabled>
            {t('outcome.choose')}
          </option>
          {heights.map(({ setup, point, side }) => (
            <option key={`${setup.label} ${point} ${side}`} value={whichHeight(setup.label, side)}>
              {t('outcome.height', {
                height: `${point} ${sideName(side)}`,
                setup: setup.label,
                gauge: setup.gauge,
              })}
            </option>
          ))}
        </select>
      </Field>
      <fieldset className={styles.causes}>
        <legend>{t('outcome.whatWasOff')}</legend>
        {[...CAUSES].reverse().map((cause) => (
          <label key={cause}>
            <input type="radio" name="cause" value={cause} required />
            {t(`outcome.choices.${cause}`)}
          </label>
        ))}
      </fieldset>
      <Field label={t('outcome.note')} id="outcome-note">
        <input id="outcome-note" name="note" maxLength={NOTE_LENGTH} autoComplete="off" />
      </Field>
      <p>{t('outcome.inYourName', { by })}</p>
      <button type="submit" className={button.strong}>
        {t('outcome.record')}
      </button>
    </form>
  );
}
