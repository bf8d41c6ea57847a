import type { Block, PrintedCell } from '@/app/_record';
import {
  bareMillimetres,
  decimal,
  grouped,
  millimetres,
  percent,
  percentTaken,
  signed,
  unit,
} from '@/app/_words/numbers';
import { told } from '@/app/_words/told';
import { words } from '@/app/_words/words';
import type { MeanEstimate, SdEstimate, TechnicianFigures } from '@/lib/assess';
import type { HandAnswer } from '@/lib/assess/answers';
import type { TalkSheet } from './gather';

type Estimated = Pick<SdEstimate, 'low' | 'high' | 'why'> & { value: number | null };

const ofSd = ({ sd, low, high, why }: SdEstimate): Estimated => ({ value: sd, low, high, why });
const ofMean = ({ mean, low, high, why }: MeanEstimate): Estimated => ({ value: mean, low, high, why });

/** One hand beside the shop: what it scatters, how far it is off, what that takes of the tolerance. */
export function figureBlocks({ own, band, hand }: TalkSheet): Block[] {
  const t = words('talk');
  if (own === null || band === null) return [{ kind: 'paragraph', text: t('figures.none') }];
  const rows: [string, Estimated, Estimated | null, string][] = [
    [t('figures.repeatability'), ofSd(own.repeatability), ofSd(band.repeatability), readingsOf(own)],
    [t('figures.setting'), ofSd(own.setting), ofSd(band.setting), t('figures.setups', { n: own.setups })],
    [t('figures.bias'), ofMean(own.bias), null, t('figures.setups', { n: own.setups })],
  ];
  return [
    { kind: 'heading', level: 2, text: t('figures.title') },
    { kind: 'paragraph', text: t('figures.note') },
    {
      kind: 'table',
      caption: t('figures.caption', { unit: unit() }),
      columns: [
        { head: t('figures.what'), width: 34 },
        { head: t('figures.own'), width: 40 },
        { head: t('figures.shop'), width: 40 },
        { head: t('figures.rests'), width: 24 },
      ],
      rows: rows.map(([name, mine, shops, rests], index): { cells: PrintedCell[] } => ({
        cells: [
          name,
          { text: estimateSaid(mine, index === 2), strong: true },
          shops === null ? t('figures.shopBias') : estimateSaid(shops),
          rests,
        ],
      })),
    },
    { kind: 'paragraph', text: rateSaid(own) },
    ...(hand === null ? [] : [shareTable(hand)]),
  ];
}

const readingsOf = ({ repeatability: { df }, setups }: TechnicianFigures): string =>
  df === null
    ? words('talk')('figures.setups', { n: setups })
    : words('talk')('figures.repeats', { n: Math.round(df) });

/** `0.97 (0.93 to 1.01)`, or why there is none. */
export function estimateSaid({ value, low, high, why }: Estimated, isSigned = false): string {
  const print = words('print');
  if (value === null) return why === null ? print('notKnown') : told(why);
  const shown = (one: number) => (isSigned ? signed(one, 2) : bareMillimetres(one, 2));
  return low === null || high === null
    ? print('noInterval', { value: shown(value) })
    : print('withInterval', { value: shown(value), low: shown(low), high: shown(high) });
}

function rateSaid({
  firstTimeRight: { rate, low, high, right, jobs, expected, why },
}: TechnicianFigures): string {
  const t = words('talk');
  if (rate === null || low === null || high === null)
    return t('figures.noRate', { why: why === null ? '' : told(why) });
  const said = t('figures.rate', {
    rate: percent(rate),
    low: percent(low),
    high: percent(high),
    right: grouped(right),
    jobs,
  });
  return expected === null ? said : `${said} ${t('figures.expected', { expected: decimal(expected, 1) })}`;
}

/** What this hand takes of the tolerance. */
function shareTable({ shares, tolerance }: HandAnswer): Block {
  const t = words('talk');
  const print = words('print');
  const rows = [
    [t('figures.repeatability'), shares.repeatability],
    [t('figures.setting'), shares.setting],
    [t('figures.both'), shares.both],
  ] as const;
  return {
    kind: 'table',
    caption: t('figures.shares', { tolerance: millimetres(tolerance) }),
    columns: [
      { head: t('figures.what'), width: 34 },
      { head: t('figures.share'), width: 30 },
      { head: t('figures.interval'), width: 74 },
    ],
    rows: rows.map(([name, { share, low, high, why }]) => ({
      cells: [
        name,
        share === null ? print('notKnown') : percentTaken(share),
        share === null
          ? told(why ?? '')
          : low === null || high === null
            ? ''
            : print('interval', { low: percentTaken(low), high: percentTaken(high) }),
      ],
    })),
  };
}
