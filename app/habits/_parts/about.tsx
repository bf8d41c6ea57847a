import { Panel } from '@/app/_look/panel';
import type { HabitText } from '@/lib/assess/habits';
import styles from './about.module.css';

/** How a habit is trained, how it shows, and what else could look the same. */
export function About({ text: { train, shows, lookalikes } }: { text: HabitText }) {
  return (
    <Panel id="train" title="How to train it">
      <p className={styles.train}>{train}</p>
      <div className={styles.beside}>
        <section>
          <h3>How it shows in readings</h3>
          <p>{shows}</p>
        </section>
        <section>
          <h3>What else could look the same</h3>
          <p>{lookalikes}</p>
        </section>
      </div>
    </Panel>
  );
}
