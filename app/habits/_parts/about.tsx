import { Panel } from '@/app/_look/panel';
import { drawnOnce } from '@/app/_look/still';
import { told } from '@/app/_words/told';
import { words } from '@/app/_words/words';
import type { HabitText } from '@/lib/assess/habits';
import styles from './about.module.css';

/** How a habit is trained, how it shows, and what else could look the same. */
export const About = drawnOnce(function About({ text: { train, shows, lookalikes } }: { text: HabitText }) {
  const t = words('habits');
  return (
    <Panel id="train" title={t('about.train')}>
      <p className={styles.train}>{told(train)}</p>
      <div className={styles.beside}>
        <section>
          <h3>{t('about.shows')}</h3>
          <p>{told(shows)}</p>
        </section>
        <section>
          <h3>{t('about.lookalikes')}</h3>
          <p>{told(lookalikes)}</p>
        </section>
      </div>
    </Panel>
  );
});
