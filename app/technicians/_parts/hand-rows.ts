import type { Cell } from '@/app/_figures/download/csv-text';
import type { ShopFigures } from '@/lib/access';
import type { TechnicianFigures } from '@/lib/assess';
import type { HandAnswer, HandSpan } from '@/lib/assess/answers';
import type { AskedHand } from './asked-hand';
import { isAsked } from './hand-question';
import { told } from '@/app/_words/told';
import { KINDS, placeName } from './place-axis';
import { FOLLOWED, type Estimated } from './quarter-points';

export const HAND_COLUMNS = [
  ...[
    'figure',
    'of',
    'value',
    'low_95',
    'high_95',
    'unit',
    'shop_value',
    'shop_low_95',
    'shop_high_95',
    'note',
  ],
];

const NONE: Estimated = { value: null, low: null, high: null, why: null };

/** The figures of one hand as rows of a file: each with its interval, and the shop's beside it where it is shown. */
export function handRows(
  own: TechnicianFigures | null,
  band: ShopFigures['shop'] | null,
  { hand, span, question }: AskedHand,
): Cell[][] {
  const placed = isAsked(question) ? span : hand;
  return [
    ...(own === null ? [] : ownRows(own, band)),
    ...(hand === null ? [] : answerRows(hand)),
    ...(span === null ? [] : spanRows(span)),
    ...(placed === null ? [] : placedRows(placed)),
  ];
}

function ownRows(own: TechnicianFigures, band: ShopFigures['shop'] | null): Cell[][] {
  const { repeatability, setting, bias, firstTimeRight: rate } = own;
  return [
    row(
      'scatter of reading again',
      '',
      sd(repeatability),
      'mm',
      band === null ? NONE : sd(band.repeatability),
    ),
    row('scatter of setting again', '', sd(setting), 'mm', band === null ? NONE : sd(band.setting)),
    row('bias of heights', '', { ...bias, value: bias.mean }, 'mm'),
    row(
      'right first time',
      '',
      { ...rate, value: rate.rate },
      'share',
      NONE,
      `${rate.right} of ${rate.jobs} jobs`,
    ),
  ];
}

function answerRows({ shares, toAThird, practice, tolerance }: HandAnswer): Cell[][] {
  const share = (name: string, { share: value, ...rest }: HandAnswer['shares']['both']) =>
    row('share of the tolerance', name, { value, ...rest }, 'share', NONE, `tolerance ${tolerance} mm`);
  const alone = (value: number | null): Estimated => ({ ...NONE, value });
  return [
    share('reading again', shares.repeatability),
    share('setting again', shares.setting),
    share('both together', shares.both),
    row('standard uncertainty of one hanging', '', alone(toAThird.now), 'mm', NONE, told(toAThird.sentence)),
    row('readings to a third of the tolerance', '', alone(toAThird.readings), 'readings'),
    row('hangings to a third of the tolerance', '', alone(toAThird.hangings), 'hangings'),
    row('what to practise next', '', NONE, '', NONE, told(practice.sentence)),
  ];
}

/** What was asked for, the shop in the same beside it. */
function spanRows({ repeatability, setting, mean, shop, shopWhy }: HandSpan): Cell[][] {
  const beside = (estimate: TechnicianFigures['setting'] | undefined) =>
    estimate === undefined ? NONE : sd(estimate);
  const [of, note] = ['in what was asked for', shopWhy ?? ''];
  return [
    row('scatter of reading again', of, sd(repeatability), 'mm', beside(shop?.repeatability), note),
    row('scatter of setting, as judged', of, sd(setting), 'mm', beside(shop?.setting), note),
    row('mean setting error', of, { ...mean, value: mean.mean }, 'mm'),
  ];
}

function placedRows({ places, quarters }: Pick<HandAnswer, 'places' | 'quarters'>): Cell[][] {
  return [
    ...KINDS.flatMap((kind) =>
      places[kind].map((place) =>
        row(
          `scatter of setting by ${kind}`,
          placeName(kind, place.name),
          sd(place.setting),
          'mm',
          NONE,
          place.lessSure ? 'less sure than elsewhere beyond chance' : '',
        ),
      ),
    ),
    ...FOLLOWED.flatMap(({ figure, of }) =>
      quarters.map(({ quarter, own, shop, shopWhy }) =>
        row(figure, quarter, of(own), 'mm', shop === null ? NONE : of(shop), shopWhy ?? ''),
      ),
    ),
  ];
}

const sd = ({ sd: value, low, high, why }: TechnicianFigures['setting']): Estimated => ({
  value,
  low,
  high,
  why,
});

function row(
  figure: string,
  of: string,
  { value, low, high, why }: Estimated,
  unit: string,
  shop: Estimated = NONE,
  note = '',
): Cell[] {
  return [figure, of, value, low, high, unit, shop.value, shop.low, shop.high, told(why ?? note)];
}
