import type { useTranslations } from 'use-intl/react';
import { millimetres, signedMillimetres } from '@/app/_words/numbers';
import type { Speech } from '@/app/_words/speech';
import { settingOf, WHY_NOT, type BayHead, type DimensionRef, type Place, type Prompt } from '@/lib/bay';
import type { Side } from '@/lib/measure/types';

export type BayWords = ReturnType<typeof useTranslations<'bay'>>;

/** `B.L-C.R` as it is written, `B.L–C.R`. */
export const placeName = ({ name }: Pick<Place, 'name'>): string => pointName(name);
export const pointName = (point: string): string => point.replace('-', '–');

/** A dimension as it is said: `C left`, `K–N`. */
export function dimensionText(
  t: BayWords,
  { point, side }: Pick<DimensionRef, 'point'> & { side: Side | null },
): string {
  return side === null ? pointName(point) : `${pointName(point)} ${t(`sides.${side}`)}`;
}

/** A setting, with as many digits as it has: `312 mm`, `12.28 in`. */
export const settingText = (value: number, to: Speech): string =>
  millimetres(value, to.units === 'mm' && Number.isInteger(value) ? 0 : 1, to);

export const toleranceText = (value: number, to: Speech): string => settingText(value, to);
export const deviationText = (value: number, to: Speech): string => signedMillimetres(value, 1, to);

const WHY_NOTS = Object.keys(WHY_NOT) as (keyof typeof WHY_NOT)[];

/** Why a reading is not taken: the device's own reasons by their words, the shop's as it says them. */
export function whyText(t: BayWords, why: string): string {
  const own = WHY_NOTS.find((key) => WHY_NOT[key] === why);
  return own === undefined ? why : t(`clash.why.${own}`);
}

/** What a place's gauge is set to on each side; one value where both are alike. */
export function settingsOf(place: Place, clearance: number): { left: number; right: number | null } | null {
  const [first, second] = place.dimensions;
  if (first?.quantity !== 'height') return null;
  const left = settingOf(first, clearance);
  const right = second === undefined ? left : settingOf(second, clearance);
  return { left, right: right === left ? null : right };
}

/** What to do now in one short sentence: to be read from two metres, or spoken. */
export function promptText(t: BayWords, prompt: Prompt, head: BayHead, to: Speech): string {
  switch (prompt.do) {
    case 'check':
      return t(`check.${prompt.check}.ask`);
    case 'hang':
      return hangText(t, prompt.place, head, to);
    case 'read':
      return t(prompt.blind ? 'say.again' : 'say.read', { name: dimensionText(t, prompt.dimension) });
    case 'finish':
      return t('say.finish');
  }
}

function hangText(t: BayWords, place: Place, { clearance }: BayHead, to: Speech): string {
  const name = placeName(place);
  const setting = settingsOf(place, clearance);
  if (setting === null) return t(place.step === 'centerline' ? 'say.pins' : 'say.take', { name });
  const left = settingText(setting.left, to);
  if (setting.right === null) return t('say.setBoth', { name, value: left });
  return t('say.setEach', { name, left, right: settingText(setting.right, to) });
}

/** One for each thing to do: where it changes, the focus goes to the new one. */
export function promptKey(prompt: Prompt): string {
  switch (prompt.do) {
    case 'check':
      return `check ${prompt.check}`;
    case 'hang':
      return `hang ${prompt.place.key} ${prompt.again ?? ''}`;
    case 'read':
      return `read ${prompt.setup.label} ${prompt.dimension.point} ${prompt.dimension.side ?? ''} ${prompt.repeat}`;
    case 'finish':
      return 'finish';
  }
}
