import { words } from '@/app/_words/words';
import { THEMES, type Theme } from './theme';
import styles from './theme-switch.module.css';

/** A plain form, so that it works before and without any script. */
export function ThemeSwitch({ theme }: { theme: Theme }) {
  const t = words('look');
  return (
    <form className={styles.form} action="/theme" method="post" data-print="no">
      <fieldset className={styles.group}>
        <legend className="out-of-sight">{t('theme.name')}</legend>
        {THEMES.map((name) => (
          <button key={name} type="submit" name="theme" value={name} aria-pressed={name === theme}>
            {t(`theme.${name}`)}
          </button>
        ))}
      </fieldset>
    </form>
  );
}
