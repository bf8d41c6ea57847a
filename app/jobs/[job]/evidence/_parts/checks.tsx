import { Panel } from '@/app/_look/panel';
import { drawnOnce } from '@/app/_look/still';
import { decimal } from '@/app/_words/numbers';
import type { RoundVerdict } from '@/lib/assess';
import styles from './checks.module.css';
import { told } from '@/app/_words/told';
import { words } from '@/app/_words/words';

/** Everything that could be checked next in this round, the most doubt settled a minute first. */
export const Checks = drawnOnce(function Checks({ verdict }: { verdict: RoundVerdict }) {
  const t = words('evidence');
  return (
    <Panel id="checks" title={t('checks.title')} note={t('checks.note')}>
      <List verdict={verdict} />
    </Panel>
  );
});

function List({ verdict: { decidable, nextChecks } }: { verdict: RoundVerdict }) {
  const t = words('evidence');
  if (!decidable) return <p>{t('checks.centerFirst')}</p>;
  if (nextChecks.length === 0) return <p>{t('checks.none')}</p>;
  return (
    <ol className={styles.list}>
      {nextChecks.map(({ action, words: sentence, gainBits, minutes }) => (
        <li key={sentence}>
          <p>
            <b>{t(`checks.actions.${action}`)}.</b> {told(sentence)}
          </p>
          <p className={styles.cost}>
            {t('checks.cost', { bits: decimal(gainBits, 2), n: Math.round(minutes) })}
          </p>
        </li>
      ))}
    </ol>
  );
}
