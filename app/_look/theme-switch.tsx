import { THEMES, type Theme } from './theme';
import styles from './theme-switch.module.css';

const NAMES: Record<Theme, string> = { system: 'Device', light: 'Light', dark: 'Dark' };

/** A plain form, so that it works before and without any script. */
export function ThemeSwitch({ theme }: { theme: Theme }) {
  return (
    <form className={styles.form} action="/theme" method="post" data-print="no">
      <fieldset className={styles.group}>
        <legend className="out-of-sight">Light or dark</legend>
        {THEMES.map((name) => (
          <button key={name} type="submit" name="theme" value={name} aria-pressed={name === theme}>
            {NAMES[name]}
          </button>
        ))}
      </fieldset>
    </form>
  );
}
