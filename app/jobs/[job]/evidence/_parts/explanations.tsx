import { Note } from '@/app/_look/note';
import { Panel } from '@/app/_look/panel';
import { drawnOnce } from '@/app/_look/still';
import { probability } from '@/app/_words/numbers';
import type { Hypothesis, Kind, RoundEvidence } from '@/lib/assess/evidence';
import { datumWords, hypothesisWords, leftOverWords } from '../_words';
import styles from './explanations.module.css';
import { HypothesisFigure } from './hypothesis-figure';
import { Legend } from './legend';
import { letterOf } from './letters';
import { words } from '@/app/_words/words';

interface ExplanationsProps {
  id: string;
  title: string;
  evidence: RoundEvidence;
  kind: Kind;
}

/** So many are drawn at once; the others open on demand. */
const OPEN = 2;

/** The leading explanations of a round, the likeliest first, each in words and as a picture. */
export const Explanations = drawnOnce(function Explanations({
  id,
  title,
  evidence,
  kind,
}: ExplanationsProps) {
  const t = words('evidence');
  const bars = evidence.hypotheses.flatMap((hypothesis) => hypothesis.bars);
  return (
    <Panel id={id} title={title} note={t('explanations.note')}>
      <Legend />
      <ol className={styles.list} data-plain>
        {evidence.hypotheses.map((hypothesis, index) => {
          const letter = letterOf(index);
          const figure = (
            <HypothesisFigure hypothesis={hypothesis} scaledBy={bars} letter={letter} kind={kind} />
          );
          return (
            <li key={letter} className={styles.one}>
              <Head letter={letter} hypothesis={hypothesis} kind={kind} />
              {index < OPEN ? (
                figure
              ) : (
                <details className={styles.more}>
                  <summary>{t('explanations.picture', { letter })}</summary>
                  {figure}
                </details>
              )}
            </li>
          );
        })}
      </ol>
      <p className={styles.rest}>{t('explanations.rest', { p: probability(evidence.rest) })}</p>
      {evidence.hypotheses.length === 1 && (
        <Note>
          <p>{t('explanations.noOther')}</p>
        </Note>
      )}
    </Panel>
  );
});

function Head({ letter, hypothesis, kind }: { letter: string; hypothesis: Hypothesis; kind: Kind }) {
  return (
    <div className={styles.head}>
      <h3>
        <span className={styles.letter}>{letter}</span> {hypothesisWords(hypothesis, kind)}
      </h3>
      <p className={styles.probability}>
        {words('evidence').rich('explanations.probability', {
          p: probability(hypothesis.probability),
          b: (chunks) => <b>{chunks}</b>,
        })}
      </p>
      <p>
        {datumWords(hypothesis.datum, kind)} {leftOverWords(hypothesis.bars, kind)}
      </p>
    </div>
  );
}
