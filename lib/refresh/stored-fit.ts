import type { Learned } from '@/lib/assess';
import type { AtWork } from '@/lib/assess/answers';
import {
  currentFit,
  followFit,
  inputsVersion,
  saveFit,
  type Fit,
  type FitTexts,
  type Json,
  type ShopId,
} from '@/lib/store';
import type { ShopFigures } from './figures';

/** Grows when the shape of what is kept changes; a fit of another shape is learned again. */
const FORMAT = 3;

export interface StoredFit {
  id: number;
  /** The figures are up to these inputs; what was learned may be from earlier ones. */
  inputsVersion: number;
  learnedAt: number;
  /** When the figures were worked out last. */
  workedOutAt: number;
  /** Rounds that are new or changed since it was learned. */
  unlearned: number;
  /** Stamp of the program that learned it. */
  program: string;
  learned: Learned;
  /** How the shop worked, from the same jobs. */
  atWork: AtWork;
  figures: ShopFigures;
}

export type NewFit = Pick<StoredFit, 'inputsVersion' | 'program' | 'learned' | 'atWork' | 'figures'>;

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

export async function keepFit(shop: ShopId, fit: NewFit): Promise<StoredFit> {
  const workedOutAt = Date.now();
  const { parameters, figures, ...stored } = asStored({ ...fit, workedOutAt, unlearned: 0 });
  const kept = await saveFit(shop, { ...stored, parameters: asJson(parameters), figures: asJson(figures) });
  return { ...fit, id: kept.id, learnedAt: kept.fittedAt, workedOutAt, unlearned: 0 };
}

export type Newer = Pick<StoredFit, 'inputsVersion' | 'figures' | 'unlearned'>;

/** A fit with figures from newer inputs by what was learned before them, as it is kept. */
export function followed(fit: StoredFit, newer: Newer): FitTexts {
  const { parameters, figures, ...stored } = asStored({ ...fit, ...newer, workedOutAt: Date.now() });
  return { ...stored, parameters: jsonText(parameters), figures: jsonText(figures) };
}

/** Keeps figures from newer inputs with what was learned before them. */
export const keepFollowed = (shop: ShopId, fit: StoredFit, newer: Newer): Promise<void> =>
  followFit(shop, fit.id, followed(fit, newer));

/** What is said of a fit after rounds were judged by it without having been learned from. */
export const withUnlearned =
  (rounds: number) =>
  (parameters: Json): Json => {
    const kept = parameters as unknown as Parameters;
    return kept.format === FORMAT ? asJson({ ...kept, unlearned: kept.unlearned + rounds }) : parameters;
  };

/** What is kept beside the figures. */
interface Parameters {
  format: number;
  program: string;
  learned: Learned;
  atWork: AtWork;
  workedOutAt: number;
  unlearned: number;
}

function asStored(fit: NewFit & Pick<Parameters, 'workedOutAt' | 'unlearned'>) {
  const { program, learned, atWork, workedOutAt, unlearned } = fit;
  const parameters: Parameters = { format: FORMAT, program, learned, atWork, workedOutAt, unlearned };
  return { inputsVersion: fit.inputsVersion, parameters, figures: fit.figures };
}

/** What this program wrote itself, in the shape that `FORMAT` stands for. */
function typed({ id, inputsVersion, fittedAt, parameters, figures }: Fit): StoredFit | null {
  const kept = parameters as unknown as Partial<Parameters> | null;
  if (kept?.format !== FORMAT) return null;
  const { program, learned, atWork, workedOutAt, unlearned } = kept as Parameters;
  return {
    id,
    inputsVersion,
    learnedAt: fittedAt,
    workedOutAt,
    unlearned,
    program,
    learned,
    atWork,
    figures: figures as unknown as ShopFigures,
  };
}

/** Plain data as JSON keeps it; a number that JSON has no word for is an error, not a silent null. */
export const asJson = (data: unknown): Json => JSON.parse(jsonText(data)) as Json;

/** The same as text. */
export function jsonText(data: unknown): string {
  requireFinite('The whole', data);
  return JSON.stringify(data);
}

/** Quicker than asking at every value while it is written. */
function requireFinite(name: string, data: unknown): void {
  if (typeof data === 'number') {
    if (!Number.isFinite(data)) throw new RangeError(`${name} is ${data}.`);
  } else if (Array.isArray(data)) {
    for (const item of data) requireFinite(name, item);
  } else if (typeof data === 'object' && data !== null) {
    for (const key in data) requireFinite(key, (data as Record<string, unknown>)[key]);
  }
}
