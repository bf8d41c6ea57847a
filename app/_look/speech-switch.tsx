import { LANGUAGES, UNITS, type Language, type Speech } from '@/app/_words/speech';
import { words } from '@/app/_words/words';
import styles from './theme-switch.module.css';

/** Each by its own name, so that who reads no other finds it. */
const NAMES: Record<Language, string> = { en: 'English', de: 'Deutsch' };

/** Language and units: plain forms, as the choice of light or dark is. */
export function SpeechSwitch({ speech }: { speech: Speech }) {
  const t = words('look');
  return (
    <form className={styles.form} action="/speech" method="post" data-print="no">
      <fieldset className={styles.group}>
        <legend className="out-of-sight">{t('speech.language')}</legend>
        {LANGUAGES.map((name) => (
          <button
            key={name}
            type="submit"
            name="language"
            value={name}
            lang={name}
            aria-pressed={name === speech.language}
          >
            {NAMES[name]}
          </button>
        ))}
      </fieldset>
      <fieldset className={styles.group}>
        <legend className="out-of-sight">{t('speech.units')}</legend>
        {UNITS.map((name) => (
          <button key={name} type="submit" name="units" value={name} aria-pressed={name === speech.units}>
            {t(`speech.${name}`)}
          </button>
        ))}
      </fieldset>
    </form>
  );
}
