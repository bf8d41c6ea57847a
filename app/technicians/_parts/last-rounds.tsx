import { Panel } from '@/app/_look/panel';
import { Tag } from '@/app/_look/tag';
import { jobAddress, roundAnchor } from '@/app/_words/address';
import { roundName } from '@/app/_words/jobs';
import { probability, signedMillimetres } from '@/app/_words/numbers';
import { causeProved } from '@/app/_words/proved';
import { dayAndTime } from '@/app/_words/times';
import { CALL_GLYPHS, callName, callInSentence } from '@/app/_words/verdicts';
import { WHAT_FOLLOWS } from './what-follows';
import type { OwnHeight, OwnRound } from './own-rounds';
import styles from './last-rounds.module.css';

interface LastRoundsProps {
  rounds: readonly OwnRound[];
  timeZone: string;
}

/** The newest rounds of one technician: what was gauge and what was body, of the heights that this hand hung. */
export function LastRounds({ rounds, timeZone }: LastRoundsProps) {
  return (
    <Panel
      id="rounds"
      title="The last ten rounds: what was gauge, what was body"
      note="Heights that this hand hung, away from the zero stations. A verdict is about the reading, never a clearance of the structure."
    >
      {rounds.length === 0 ? (
        <p>No round with heights lies in what was asked for.</p>
      ) : (
        <ol data-plain className={styles.rounds}>
          {rounds.map((round) => (
            <li key={`${round.job} ${round.stage} ${round.attempt}`} className={styles.round}>
              <h3>
                <a href={`${jobAddress(round.job)}#${roundAnchor(round.stage, round.attempt)}`}>
                  {round.job}, {roundName(round.stage, round.attempt)}
                </a>
              </h3>
              <p className={styles.quiet}>
                {dayAndTime(round.at, timeZone)}. {tally(round)}
              </p>
              {round.why !== null && <p>{round.why}</p>}
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
}

function Height({ setup, point, side, deviation, call, p, proved }: OwnHeight) {
  const gauge = probability(p.gauge + p.both);
  const body = probability(p.body + p.both);
  return (
    <li>
      <span className={styles.what}>
        {point} {side === 'L' ? 'left' : 'right'} {signedMillimetres(deviation)}
      </span>
      <Tag name={CALL_GLYPHS[call]}>{callName(call)}</Tag>
      <span>
        {WHAT_FOLLOWS[call]}
        {proved !== null && ` A re-check showed ${causeProved(proved)}.`}{' '}
        <span className={styles.quiet}>
          Setup {setup}; gauge off {gauge}, body off {body}
        </span>
      </span>
    </li>
  );
}

function tally({ heights, doubtful }: OwnRound): string {
  if (heights === 0) return 'No height of this hand in it.';
  const of = (call: OwnHeight['call']) => doubtful.filter((one) => one.call === call).length;
  const told = (['likely-gauge', 'likely-body', 'likely-both', 'undecided'] as const)
    .filter((call) => of(call) > 0)
    .map((call) => `${of(call)} ${callInSentence(call)}`);
  const rest = heights - doubtful.length;
  return `Of ${heights} heights: ${[...told, ...(rest > 0 ? [`${rest} neither`] : [])].join(', ')}.`;
}
