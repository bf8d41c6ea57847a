import type { Learned } from '@/lib/assess';
import { currentFit, inputsVersion, saveFit, type Fit, type Json, type ShopId } from '@/lib/store';
import type { ShopFigures } from './figures';

/** Grows when the shape of what is kept changes; a fit of another shape is learned again. */
const FORMAT = 1;

export interface StoredFit {
  id: number;
  inputsVersion: number;
  fittedAt: number;
  /** Stamp of the program that learned it. */
  program: string;
  learned: Learned;
  figures: ShopFigures;
}

export interface NewFit {
  inputsVersion: number;
  program: string;
  learned: Learned;
  figures: ShopFigures;
}

/** The newest fit of this program's shape; null before the first. */
export async function readFit(shop: ShopId): Promise<StoredFit | null> {
  const fit = await currentFit(shop);
  return fit && typed(fit);
}

/** The same, with whether readings have come in since. */
export async function readFitWithAge(shop: ShopId): Promise<(StoredFit & { stale: boolean }) | null> {
  const [fit, version] = await Promise.all([readFit(shop), inputsVersion(shop)]);
  return fit && { ...fit, stale: fit.inputsVersion !== version };
}

export async function keepFit(
  shop: ShopId,
  { inputsVersion, program, learned, figures }: NewFit,
): Promise<StoredFit> {
  const kept = await saveFit(shop, {
    inputsVersion,
    parameters: asJson({ format: FORMAT, program, learned }),
    figures: asJson(figures),
  });
  return { id: kept.id, inputsVersion, fittedAt: kept.fittedAt, program, learned, figures };
}

/** What this program wrote itself, in the shape that `FORMAT` stands for. */
function typed({ id, inputsVersion, fittedAt, parameters, figures }: Fit): StoredFit | null {
  const kept = parameters as unknown as { format?: number; program: string; learned: Learned } | null;
  if (kept?.format !== FORMAT) return null;
  return {
    id,
    inputsVersion,
    fittedAt,
    program: kept.program,
    learned: kept.learned,
    figures: figures as unknown as ShopFigures,
  };
}

/** Plain data as JSON keeps it; a number that JSON has no word for is an error, not a silent null. */
export function asJson(data: unknown): Json {
  const text = JSON.stringify(data, (key, value: unknown) => {
    if (typeof value === 'number' && !Number.isFinite(value)) throw new RangeError(`${key} is ${value}.`);
    return value;
  });
  return JSON.parse(text) as Json;
}
