import { useTranslations } from 'use-intl/react';
import button from '@/app/_look/button.module.css';
import { Glyph } from '@/app/_look/glyph';
import { Tag } from '@/app/_look/tag';
import { millimetres, probability } from '@/app/_words/numbers';
import { useSpeech } from '@/app/_words/speech/device';
import type { Place, ReadDimension } from '@/lib/bay';
import { dimensionKey } from '@/lib/measure/dimension';
import type { CaughtHeight } from '@/lib/bay/caught';
import type { LastReading } from './last-reading';
import { deviationText, dimensionText, placeName, toleranceText } from './names';
import type { Caught } from './use-caught';
import styles from './caught.module.css';

const CALL_GLYPHS = {
  'nothing-found': 'neither',
  'likely-gauge': 'gauge',
  'likely-body': 'body',
  'likely-both': 'both',
  undecided: 'undecided',
} as const;

interface CaughtPanelProps {
  last: LastReading | null;
  caught: Caught;
  hangAgain: (place: Place) => void;
}

/** What the last reading means, as far as the readings so far tell. */
export function CaughtPanel({ last, caught, hangAgain }: CaughtPanelProps) {
  const t = useTranslations('bay');
  if (last === null) return <p className={styles.quiet}>{t('kept.none')}</p>;
  if (last.hidden) return <p className={styles.quiet}>{t('kept.blind')}</p>;
  const { place, setup, read, stale } = last;
  const out = read.some(({ within }) => !within);
  const round = caught.is === 'found' ? caught.round : null;
  const isLength = place.dimensions[0]?.quantity === 'length';
  const undecided = round?.datumTrusted === false;
  const said = round === null || undecided || stale ? [] : heightsOf(round.heights, setup.label, read);
  const again = out || said.some(({ call }) => call !== 'nothing-found');
  return (
    <div className={styles.caught}>
      <ul data-plain className={styles.values}>
        {read.map((one) => (
          <Value
            key={`${one.dimension.point} ${one.dimension.side ?? ''}`}
            one={one}
            uncertainty={round?.uncertainties.get(`${setup.label} ${dimensionKey(one.dimension)}`) ?? null}
          />
        ))}
      </ul>
      {isLength && out && <p>{t('kept.lengthOut')}</p>}
      {!isLength && caught.is === 'working' && <p className={styles.quiet}>{t('kept.working')}</p>}
      {!isLength && caught.is === 'missing' && <p className={styles.quiet}>{t('kept.missing')}</p>}
      {!isLength && round !== null && !undecided && round.zeroMisset === null && (
        <p className={styles.quiet}>{t('kept.zeroNext')}</p>
      )}
      {said.map((one) => (
        <Said key={`${one.point} ${one.side ?? ''}`} one={one} many={said.length > 1} />
      ))}
      {[...new Set(said.map(({ call }) => call))].map(
        (call) =>
          call !== 'nothing-found' && (
            <p key={call} className={styles.do}>
              {t(`kept.do.${call}`)}
            </p>
          ),
      )}
      {again && (
        <button type="button" className={button.button} onClick={() => hangAgain(place)}>
          {t(isLength ? 'kept.measureAgain' : 'kept.hangAgain', { name: placeName(place) })}
        </button>
      )}
      {round !== null && said.length > 0 && <p className={styles.small}>{t('kept.rests', round.rests)}</p>}
    </div>
  );
}

/** The verdicts on this hanging; what is alike on both sides and within its tolerance is said once. */
function heightsOf(
  heights: readonly CaughtHeight[],
  setup: string,
  read: readonly ReadDimension[],
): CaughtHeight[] {
  const own = heights.filter(
    (one) =>
      one.setup === setup &&
      read.some(({ dimension }) => dimension.point === one.point && dimension.side === one.side),
  );
  const doubtful = own.filter(({ call }) => call !== 'nothing-found');
  return doubtful.length > 0 ? doubtful : own.slice(0, 1);
}

/** A deviation, and what it is uncertain by (k = 2, about 95 %) as soon as that is worked out. */
function Value({
  one: { dimension, deviation, within },
  uncertainty,
}: {
  one: ReadDimension;
  uncertainty: number | null;
}) {
  const t = useTranslations('bay');
  const to = useSpeech();
  return (
    <li>
      <strong>
        {t('kept.value', { name: dimensionText(t, dimension), deviation: deviationText(deviation, to) })}
      </strong>
      <Tag name={within ? 'within' : 'out'}>{t(within ? 'kept.within' : 'kept.out')}</Tag>
      <span className={styles.small}>
        {t('kept.tolerance', { tolerance: toleranceText(dimension.tolerance, to) })}
        {uncertainty !== null && t('kept.uncertainty', { by: millimetres(2 * uncertainty, 1, to) })}
      </span>
    </li>
  );
}

function Said({ one, many }: { one: CaughtHeight; many: boolean }) {
  const t = useTranslations('bay');
  const to = useSpeech();
  const { call, p, slip, gaugePart, bodyPart } = one;
  const likeliest = { 'nothing-found': p.neither, 'likely-gauge': p.gauge, 'likely-body': p.body + p.both };
  const share = call === 'likely-both' ? p.both : call === 'undecided' ? 0 : likeliest[call];
  return (
    <div className={styles.said} data-call={call}>
      <Glyph name={CALL_GLYPHS[call]} />
      <div>
        {many && <p className={styles.small}>{dimensionText(t, one)}</p>}
        <p>
          {t(`kept.calls.${call}`, {
            p: probability(share),
            gauge: probability(p.gauge),
            body: probability(p.body),
            both: probability(p.both),
          })}
        </p>
        {slip !== null && slip.slip !== 'both' && slip.slip !== 'left' && slip.slip !== 'right' && (
          <p>
            {slip.size === null
              ? t('kept.slipNoSize', { slip: slipText(slip.slip) })
              : t('kept.slip', { slip: slipText(slip.slip), size: deviationText(slip.size, to) })}
          </p>
        )}
        {call !== 'nothing-found' && (
          <p className={styles.small}>
            {t('kept.parts', { gauge: deviationText(gaugePart, to), body: deviationText(bodyPart, to) })}
          </p>
        )}
      </div>
    </div>
  );

  function slipText(
    name: Exclude<NonNullable<CaughtHeight['slip']>['slip'], 'both' | 'left' | 'right'>,
  ): string {
    const by = millimetres(name === 'tape-100' ? 100 : 10, 0, to);
    return t(`kept.slips.${name}`, { by });
  }
}
