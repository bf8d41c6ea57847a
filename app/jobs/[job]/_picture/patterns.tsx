import { drawnOnce } from '@/app/_look/still';
import { Glyph } from '@/app/_look/glyph';
import { Panel } from '@/app/_look/panel';
import { Table } from '@/app/_look/table';
import { roundName } from '@/app/_words/jobs';
import { probability, signed, signedMillimetres, millimetres, unit } from '@/app/_words/numbers';
import { words } from '@/app/_words/words';
import type { RoundVerdict } from '@/lib/assess';
import type { PatternFinding } from '@/lib/assess/patterns';
import type { Round } from '@/lib/measure';
import { verdictAmong } from './of-job';
import { patternPlace, patternSentence, untoldSentence, whyNotSentence } from './pattern-words';
import styles from './picture.module.css';

interface PatternsProps {
  rounds: readonly Round[];
  verdicts: readonly RoundVerdict[];
}

/** Which patterns the readings of the shown rounds bear out, and why the others are not named. */
export const Patterns = drawnOnce(function Patterns({ rounds, verdicts }: PatternsProps) {
  const t = words('jobs');
  const verdictOf = verdictAmong(verdicts);
  return (
    <Panel id="patterns" title={t('patterns.title')} note={t('patterns.note')}>
      {rounds.map((round) => (
        <OfRound
          key={`${round.stage} ${round.attempt}`}
          name={roundName(round.stage, round.attempt)}
          patterns={verdictOf(round)?.patterns}
        />
      ))}
    </Panel>
  );
});

function OfRound({ name, patterns }: { name: string; patterns: RoundVerdict['patterns'] }) {
  const t = words('jobs');
  const named = patterns?.findings.filter((one) => one.named) ?? [];
  const others = patterns?.findings.filter((one) => !one.named) ?? [];
  return (
    <section className={styles.patterns}>
      <h3>{name}</h3>
      {patterns === undefined ? (
        <p>{t('patterns.notJudged')}</p>
      ) : named.length === 0 ? (
        <p>{t('patterns.none')}</p>
      ) : (
        <>
          <ul data-plain>
            {named.map((finding) => (
              <li key={keyOf(finding)} className={styles.named}>
                <Glyph name="body" />
                <span>
                  <b>{patternSentence(finding)}</b>{' '}
                  {t('patterns.how', {
                    low: signedMillimetres(finding.low),
                    high: signedMillimetres(finding.high),
                    probability: probability(finding.probability),
                  })}
                </span>
              </li>
            ))}
          </ul>
          <p>{t('patterns.confirm')}</p>
        </>
      )}
      {patterns !== undefined && (
        <details>
          <summary>{t('patterns.others', { n: others.length + patterns.untold.length })}</summary>
          {others.length > 0 && <NotBorneOut findings={others} />}
          {patterns.untold.length > 0 && (
            <ul className={styles.untold}>
              {patterns.untold.map((one) => (
                <li key={`${one.pattern} ${one.section ?? ''}`}>{untoldSentence(one)}</li>
              ))}
            </ul>
          )}
        </details>
      )}
    </section>
  );
}

function NotBorneOut({ findings }: { findings: PatternFinding[] }) {
  const t = words('jobs');
  return (
    <Table
      caption={t('patterns.table.caption', { unit: unit() })}
      rows={findings}
      rowKey={keyOf}
      columns={[
        { key: 'pattern', head: t('patterns.table.pattern'), names: true, cell: patternPlace },
        { key: 'size', head: t('patterns.table.size'), numeric: true, cell: ({ size }) => signed(size) },
        {
          key: 'interval',
          head: t('patterns.table.interval'),
          numeric: true,
          cell: ({ low, high }) => t('patterns.table.to', { low: signed(low), high: signed(high) }),
        },
        {
          key: 'read',
          head: t('patterns.table.asRead'),
          numeric: true,
          cell: ({ asRead }) => signed(asRead),
        },
        {
          key: 'threshold',
          head: t('patterns.table.threshold'),
          numeric: true,
          cell: ({ threshold }) => millimetres(threshold, 0),
        },
        {
          key: 'probability',
          head: t('patterns.table.probability'),
          numeric: true,
          cell: (finding) => probability(finding.probability),
        },
        {
          key: 'why',
          head: t('patterns.table.why'),
          cell: ({ why }) => why !== null && <span className={styles.why}>{whyNotSentence(why)}</span>,
        },
      ]}
    />
  );
}

const keyOf = ({ pattern, section, side }: PatternFinding): string =>
  `${pattern} ${section ?? ''} ${pattern === 'mash' ? (side ?? '') : ''}`;
