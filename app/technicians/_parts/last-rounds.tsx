import { drawnOnce } from '@/app/_look/still';
import { Panel } from '@/app/_look/panel';
import { Tag } from '@/app/_look/tag';
import { jobAddress, roundAnchor } from '@/app/_words/address';
import { roundName } from '@/app/_words/jobs';
import { probability, signedMillimetres } from '@/app/_words/numbers';
import { causeProved } from '@/app/_words/proved';
import { dayAndTime } from '@/app/_words/times';
import { sideName } from '@/app/_words/dimensions';
import { told } from '@/app/_words/told';
import { words } from '@/app/_words/words';
import { CALL_GLYPHS, callName, callInSentence } from '@/app/_words/verdicts';
import { whatFollows } from './what-follows';
import type { OwnHeight, OwnRound } from './own-rounds';
import styles from './last-rounds.module.css';

interface LastRoundsProps {
  rounds: readonly OwnRound[];
  timeZone: string;
}

/** The newest rounds of one technician: what was gauge and what was body, of the heights that this hand hung. */
export const LastRounds = drawnOnce(function LastRounds({ rounds, timeZone }: LastRoundsProps) {
  const t = words('hand');
  return (
    <Panel id="rounds" title={t('rounds.title')} note={t('rounds.note')}>
      {rounds.length === 0 ? (
        <p>{t('rounds.empty')}</p>
      ) : (
        <ol data-plain className={styles.rounds}>
          {rounds.map((round) => (
            <li key={`${round.job} ${round.stage} ${round.attempt}`} className={styles.round}>
              <h3>
                <a href={`${jobAddress(round.job)}#${roundAnchor(round.stage, round.attempt)}`}>
                  {t('rounds.of', { job: round.job, round: roundName(round.stage, round.attempt) })}
                </a>
              </h3>
              <p className={styles.quiet}>
                {t('rounds.when', { time: dayAndTime(round.at, timeZone), tally: tally(round) })}
              </p>
              {round.why !== null && <p>{told(round.why)}</p>}
              {round.doubtful.length > 0 && (
                <ul data-plain className={styles.heights}>
                  {round.doubtful.map((height) => (
                    <Height key={`${height.setup} ${height.point} ${height.side}`} {...height} />
                  ))}
                </ul>
              )}
            </li>
          ))}
        </ol>
      )}
    </Panel>
  );
});

function Height({ setup, point, side, deviation, call, p, proved }: OwnHeight) {
  const t = words('hand');
  const gauge = probability(p.gauge + p.both);
  const body = probability(p.body + p.both);
  return (
    <li>
      <span className={styles.what}>
        {t('rounds.place', { point, side: sideName(side), deviation: signedMillimetres(deviation) })}
      </span>
      <Tag name={CALL_GLYPHS[call]}>{callName(call)}</Tag>
      <span>
        {whatFollows(call)}
        {proved !== null && ` ${t('rounds.proved', { cause: causeProved(proved) })}`}{' '}
        <span className={styles.quiet}>{t('rounds.chances', { setup, gauge, body })}</span>
      </span>
    </li>
  );
}

function tally({ heights, doubtful }: OwnRound): string {
  const t = words('hand');
  if (heights === 0) return t('rounds.noHeight');
  const of = (call: OwnHeight['call']) => doubtful.filter((one) => one.call === call).length;
  const called = (['likely-gauge', 'likely-body', 'likely-both', 'undecided'] as const)
    .filter((call) => of(call) > 0)
    .map((call) => t('rounds.called', { n: of(call), call: callInSentence(call) }));
  const rest = heights - doubtful.length;
  const all = [...called, ...(rest > 0 ? [t('rounds.neither', { n: rest })] : [])];
  return t('rounds.tally', { heights, calls: all.join(', ') });
}
