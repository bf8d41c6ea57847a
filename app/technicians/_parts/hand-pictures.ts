import type { Drawing } from '@/app/_figures/drawing/drawing';
import { estimateDrawing } from '@/app/_figures/estimate-drawing';
import { estimateTick } from '@/app/_figures/estimate-axis';
import { intervalDrawing } from '@/app/_figures/interval-drawing';
import { bareMillimetres, unit } from '@/app/_words/numbers';
import { whyTold } from '@/app/_words/why';
import { words } from '@/app/_words/words';
import type { ShopFigures } from '@/lib/access';
import type { SdEstimate, TechnicianFigures } from '@/lib/assess';
import { isAsked } from './hand-question';
import type { AskedHand } from './asked-hand';
import { kindInSentence, KINDS, placeAxis, placeName } from './place-axis';
import { quarterDrawing } from './quarter-drawing';
import { FOLLOWED, followedTitle, pointsOf } from './quarter-points';
import { scatterRows } from './span-rows';
import { shareDrawing } from './share-drawing';

export interface Picture {
  title: string;
  drawing: Drawing;
}

interface Figures {
  own: TechnicianFigures | null;
  band: ShopFigures['shop'] | null;
}

/** The picture of a hand that is asked for by name; null where there is none of it. */
export function handPicture(
  of: string | undefined,
  code: string,
  { hand, span, question }: AskedHand,
  { own, band }: Figures,
): Picture | null {
  if (hand === null) return null;
  const t = words('hand');
  const placed = isAsked(question) ? span : hand;
  const followed = FOLLOWED.find(({ key }) => key === of);
  if (followed !== undefined)
    return {
      title: t('quarters.picture', { title: followedTitle(followed), code, unit: unit() }),
      drawing: quarterDrawing(followed, pointsOf(placed?.quarters ?? [], followed)),
    };
  const kind = KINDS.find((one) => one === of);
  if (kind !== undefined) {
    const places = placed?.places[kind] ?? [];
    const axis = placeAxis(places);
    const title = t('places.picture', { code, kind: kindInSentence(kind), unit: unit() });
    return {
      title,
      drawing: intervalDrawing({
        what: title,
        axis,
        intervals: places.map(({ name, setting }) => ({
          name: placeName(kind, name),
          ...setting,
          value: setting.sd,
          why: whyTold(setting.why),
        })),
        print: (value) => bareMillimetres(value, 2),
        tick: (tick) => estimateTick(tick, 'sd', axis),
      }),
    };
  }
  if (of === 'tolerance') return { title: t('tolerance.picture', { code }), drawing: shareDrawing(hand) };
  if (of === 'asked' && span !== null) {
    const title = t('span.picture', { code, unit: unit() });
    return { title, drawing: estimateDrawing(title, 'sd', scatterRows(span)) };
  }
  if (of === 'beside' && own !== null && band !== null) {
    const title = t('beside.picture', { code, unit: unit() });
    const row = (name: string, { sd, low, high, why }: SdEstimate) => ({
      name,
      value: sd,
      low,
      high,
      why: whyTold(why),
    });
    return {
      title,
      drawing: estimateDrawing(title, 'sd', [
        row(t('rows.reading'), own.repeatability),
        row(t('rows.shopReading'), band.repeatability),
        row(t('rows.setting'), own.setting),
        row(t('rows.shopSetting'), band.setting),
      ]),
    };
  }
  return null;
}
