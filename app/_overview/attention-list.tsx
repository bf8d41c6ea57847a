import { drawnOnce } from '@/app/_look/still';
import Link from 'next/link';
import type { ReactNode } from 'react';
import { Glyph, type GlyphName } from '@/app/_look/glyph';
import { gaugeAddress, jobAddress, roundAnchor, technicianAddress } from '@/app/_words/address';
import { roundName } from '@/app/_words/jobs';
import { day } from '@/app/_words/times';
import {
  CONCERNS,
  gaugeConcern,
  LOOKED_BACK,
  openHeights,
  type Attention,
  type GaugeConcern,
  type JudgedRound,
} from './attention';
import type { Departure } from './departures';
import { SignalList } from '@/app/rates/signals/_parts/signal-list';
import type { Attention as Signals } from '@/lib/assess/signals';
import styles from './attention-list.module.css';
import { told } from '@/app/_words/told';
import { words } from '@/app/_words/words';

/** More lines than this are told as a count: a list that never ends is not read. */
const SHOWN = 4;

const CONCERN_KEYS = {
  'out of service': 'gauges.out',
  'verification overdue': 'gauges.overdue',
  'never verified': 'gauges.never',
} as const satisfies Record<GaugeConcern, string>;

interface AttentionListProps {
  attention: Attention;
  departures: Departure[];
  /** What changed beyond chance; null before the first answer. */
  signals: Pick<Signals, 'signals' | 'quiet'> | null;
  now: number;
  timeZone: string;
  /** What missing damage costs against a needless re-hang. */
  missCost: number;
}

export const AttentionList = drawnOnce(function AttentionList({
  attention,
  departures,
  signals,
  now,
  timeZone,
  missCost,
}: AttentionListProps) {
  const t = words('overview');
  const changed = signals?.signals ?? [];
  const nothing =
    attention.open.length +
      attention.undecidable.length +
      attention.gauges.length +
      departures.length +
      changed.length ===
    0;
  if (nothing)
    return (
      <p>
        {t('attention.nothing')} {told(signals?.quiet ?? '')}
      </p>
    );
  return (
    <div className={styles.groups}>
      <Group
        title={t('attention.open')}
        glyph="undecided"
        total={attention.open.length}
        rest={attention.open.length - SHOWN}
      >
        {attention.open.slice(0, SHOWN).map((round) => (
          <RoundLine key={roundKey(round)} round={round} timeZone={timeZone} missCost={missCost}>
            {told(round.nextChecks[0]?.words ?? '')}
          </RoundLine>
        ))}
      </Group>
      <Group
        title={t('attention.undecidable')}
        glyph="caution"
        total={attention.undecidable.length}
        rest={attention.undecidable.length - SHOWN}
      >
        {attention.undecidable.slice(0, SHOWN).map((round) => (
          <RoundLine key={roundKey(round)} round={round} timeZone={timeZone} missCost={missCost}>
            {told(round.why ?? '')}
          </RoundLine>
        ))}
      </Group>
      <SignalGroup signals={signals} />
      <Group title={t('attention.departures')} glyph="both" total={departures.length}>
        {departures.map((departure) => (
          <li key={`${departure.technician} ${departure.of}`}>
            <Link href={technicianAddress(departure.technician)}>{departure.technician}</Link>
            <p>{departure.words}</p>
          </li>
        ))}
      </Group>
      <Group title={t('attention.gauges')} glyph="gauge" total={attention.gauges.length}>
        {CONCERNS.map((concern) => {
          const gauges = attention.gauges.filter((gauge) => gaugeConcern(gauge, now) === concern);
          return (
            gauges.length > 0 && (
              <li key={concern}>
                <b>{t(CONCERN_KEYS[concern])}</b>
                <p className={styles.tags}>
                  {gauges.map((gauge) => (
                    <Link key={gauge.tag} href={gaugeAddress(gauge.tag)} prefetch={false}>
                      {gauge.tag}
                    </Link>
                  ))}
                </p>
              </li>
            )
          );
        })}
      </Group>
    </div>
  );
});

/** What changed beyond chance, worse and better alike: what got better is to be kept. */
function SignalGroup({ signals }: Pick<AttentionListProps, 'signals'>) {
  if (signals === null) return null;
  return (
    <section className={styles.group} id="signals">
      <h3>
        <Glyph name="rising" />
        {words('overview')('attention.changes')} <span>({signals.signals.length})</span>
      </h3>
      {signals.quiet !== null && <p className={styles.rest}>{told(signals.quiet)}</p>}
      <SignalList signals={signals.signals} className={styles.signals} />
    </section>
  );
}

interface GroupProps {
  title: string;
  glyph: GlyphName;
  total: number;
  /** How many are not shown. */
  rest?: number;
  children: ReactNode;
}

function Group({ title, glyph, total, rest = 0, children }: GroupProps) {
  if (total === 0) return null;
  return (
    <section className={styles.group}>
      <h3>
        <Glyph name={glyph} />
        {title} <span>({total})</span>
      </h3>
      <ul data-plain>{children}</ul>
      {rest > 0 && (
        <p className={styles.rest}>{words('overview')('attention.more', { n: rest, of: LOOKED_BACK })}</p>
      )}
    </section>
  );
}

function RoundLine({
  round,
  timeZone,
  missCost,
  children,
}: {
  round: JudgedRound;
  timeZone: string;
  missCost: number;
  children: ReactNode;
}) {
  return (
    <li>
      <Link href={`${jobAddress(round.job)}#${roundAnchor(round.stage, round.attempt)}`} prefetch={false}>
        {round.job}
      </Link>
      <p>
        <span className={styles.when}>
          {words('overview')(round.decidable ? 'attention.openRound' : 'attention.round', {
            round: roundName(round.stage, round.attempt),
            day: day(round.at, timeZone),
            n: openHeights(round, missCost).length,
          })}{' '}
        </span>
        {children}
      </p>
    </li>
  );
}

const roundKey = (round: JudgedRound) => `${round.job} ${round.stage} ${round.attempt}`;
