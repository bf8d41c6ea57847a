import type { Drawing } from '@/app/_figures/drawing/drawing';
import { estimateDrawing } from '@/app/_figures/estimate-drawing';
import { estimateTick } from '@/app/_figures/estimate-axis';
import { intervalDrawing } from '@/app/_figures/interval-drawing';
import { bareMillimetres, unit } from '@/app/_words/numbers';
import type { ShopFigures } from '@/lib/access';
import type { SdEstimate, TechnicianFigures } from '@/lib/assess';
import { isAsked } from './hand-question';
import type { AskedHand } from './asked-hand';
import { KINDS, placeAxis } from './place-axis';
import { quarterDrawing } from './quarter-drawing';
import { FOLLOWED, pointsOf } from './quarter-points';
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
  const placed = isAsked(question) ? span : hand;
  const followed = FOLLOWED.find(({ key }) => key === of);
  if (followed !== undefined)
    return {
      title: `${followed.title} of ${code} by quarter, ${unit()}`,
      drawing: quarterDrawing(followed, pointsOf(placed?.quarters ?? [], followed)),
    };
  const kind = KINDS.find((one) => one === of);
  if (kind !== undefined) {
    const places = placed?.places[kind] ?? [];
    const axis = placeAxis(places);
    const title = `Scatter of setting of ${code} by ${kind}, ${unit()}`;
    return {
      title,
      drawing: intervalDrawing({
        ...{ what: title, axis },
        intervals: places.map(({ name, setting }) => ({ name, ...setting, value: setting.sd })),
        print: (value) => bareMillimetres(value, 2),
        tick: (tick) => estimateTick(tick, 'sd', axis),
      }),
    };
  }
  if (of === 'tolerance')
    return { title: `Share of the tolerance that ${code} takes`, drawing: shareDrawing(hand) };
  if (of === 'asked' && span !== null) {
    const title = `Scatter of ${code} in what was asked for, ${unit()}`;
    return { title, drawing: estimateDrawing(title, 'sd', scatterRows(span)) };
  }
  if (of === 'beside' && own !== null && band !== null) {
    const title = `${code} beside the shop, ${unit()}`;
    const row = (name: string, { sd, low, high, why }: SdEstimate) => ({ name, value: sd, low, high, why });
    return {
      title,
      drawing: estimateDrawing(title, 'sd', [
        row('Reading again', own.repeatability),
        row('The shop, reading again', band.repeatability),
        row('Setting again', own.setting),
        row('The shop, setting again', band.setting),
      ]),
    };
  }
  return null;
}
