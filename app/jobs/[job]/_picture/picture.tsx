import { drawnOnce } from '@/app/_look/still';
import Link from 'next/link';
import { DownloadLinks } from '@/app/_figures/download/download-links';
import { StillDrawing } from '@/app/_figures/drawing/still-drawing';
import { NARROW, type Scene } from '@/app/_figures/vehicle-picture';
import { classNames } from '@/app/_look/class-names';
import { Panel } from '@/app/_look/panel';
import { address, jobAddress, roundAnchor } from '@/app/_words/address';
import { millimetres } from '@/app/_words/numbers';
import { roundName } from '@/app/_words/jobs';
import { words } from '@/app/_words/words';
import type { Round } from '@/lib/measure';
import { sceneBy, type Pictured } from './of-job';
import { drawingsOf } from './drawings';
import { NumbersTable } from './numbers-table';
import { DEFAULT_HALF_WIDTH, ofEitherSide, undrawn, unplaced } from './scene-of';
import { BESIDE, choicesOf, OVER, type Shown } from './shown';
import styles from './picture.module.css';

interface PictureProps extends Pictured {
  shown: Shown;
}

/** The vehicle from below and from the side: the rounds that the reader chooses, beside or over each other. */
export const Picture = drawnOnce(function Picture({ shown, ...pictured }: PictureProps) {
  const t = words('jobs');
  const { job, rounds } = pictured.job;
  const choices = choicesOf(rounds);
  const scene = sceneBy(pictured, shown);
  return (
    <Panel id="picture" title={t('picture.title')} note={t('picture.note')}>
      {choices.length > 1 && (
        <nav aria-label={t('picture.choose')} className={styles.choices} data-print="no">
          {choices.map((choice) => (
            <Link
              key={choice}
              href={`${address(jobAddress(job), { show: choice })}#picture`}
              aria-current={choice === shown.choice ? 'true' : undefined}
              prefetch={false}
            >
              {choiceName(choice, rounds)}
            </Link>
          ))}
        </nav>
      )}
      {scene === null ? <p>{t('picture.nothing')}</p> : <Figures job={job} shown={shown} scene={scene} />}
    </Panel>
  );
});

function Figures({ job, shown, scene }: { job: string; shown: Shown; scene: Scene }) {
  const t = words('jobs');
  const wide = drawingsOf(scene, shown.over);
  const narrow = drawingsOf(scene, shown.over, NARROW);
  const left = undrawn(scene);
  const either = ofEitherSide(scene);
  const missing = unplaced(scene).map(({ letter }) => letter);
  return (
    <>
      <div className={classNames(styles.figures, wide.length > 1 && styles.beside)}>
        {wide.map(({ name, drawing }, index) => {
          const reduced = narrow[index]?.drawing;
          return (
            <figure key={name} className={styles.figure}>
              <figcaption>
                <h3>{name}</h3>
              </figcaption>
              <div className={styles.wide}>
                <StillDrawing drawing={drawing} />
              </div>
              {reduced !== undefined && (
                <div className={styles.narrow}>
                  <StillDrawing drawing={reduced} />
                </div>
              )}
            </figure>
          );
        })}
      </div>
      <p className={styles.small}>
        {[
          t('picture.generic'),
          ...(missing.length > 0
            ? [
                t('picture.unplaced', {
                  points: [...new Set(missing)].join(', '),
                  distance: millimetres(DEFAULT_HALF_WIDTH, 0),
                }),
              ]
            : []),
          ...(either.length > 0 ? [t('picture.either', { lengths: either.join(', ') })] : []),
          ...(left.length > 0 ? [t('picture.undrawn', { lengths: left.join(', ') })] : []),
        ].join(' ')}
      </p>
      <DownloadLinks
        of={t('picture.of', { job })}
        picture={address(`${jobAddress(job)}/picture`, { show: shown.choice })}
      />
      <details className={styles.numbers} data-print="open">
        <summary>{t('picture.numbers')}</summary>
        <NumbersTable scene={scene} />
      </details>
    </>
  );
}

/** A choice in words. */
function choiceName(choice: string, rounds: readonly Round[]): string {
  const t = words('jobs');
  if (choice === BESIDE) return t('picture.beside');
  if (choice === OVER) return t('picture.over');
  const round = rounds.find(({ stage, attempt }) => roundAnchor(stage, attempt) === choice);
  return round === undefined ? choice : roundName(round.stage, round.attempt);
}
