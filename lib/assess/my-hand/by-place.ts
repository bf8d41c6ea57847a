import { benjaminiHochberg, mergeCollapsed, sdInterval, sdRatio, tInterval } from '@/lib/stats';
import type { MeanEstimate, SdEstimate } from '../types';
import type { HandCell, PlaceFigure, PlaceKind } from './types';

/** Upper edges of the distances from the zero span, mm; the last is open. */
const DISTANCES = [0, 500, 1000, 1500] as const;

const FALSE_CALLS = 0.05;

const NAMES: Record<PlaceKind, (cell: HandCell) => string> = {
  'section and side': ({ section, side }) => `${section} ${side === 'L' ? 'left' : 'right'}`,
  'distance from the zero span': ({ distance }) => distanceName(distance),
  gauge: ({ gauge }) => gauge,
};

/** Bands in their order from the zero span outwards; other places by name. */
const BANDS = [
  'stations within the zero span',
  'stations up to 500 mm out',
  'stations 500 to 1000 mm out',
  'stations 1000 to 1500 mm out',
  'stations beyond 1500 mm',
];

function distanceName(distance: number): string {
  const place = DISTANCES.findIndex((edge) => distance <= edge);
  return BANDS[place < 0 ? BANDS.length - 1 : place] ?? '';
}

/**
 * Where a hand is least sure: setting scatter by kind of place, each against the same hand everywhere else (F ratio),
 * adjusted over the places of the kind by Benjamini and Hochberg. Places come in order, not by size.
 */
export function byPlace(cells: readonly HandCell[], kind: PlaceKind): PlaceFigure[] {
  const groups = new Map<string, Totals>();
  for (const cell of cells) {
    const name = NAMES[kind](cell);
    groups.set(name, add(groups.get(name) ?? NOTHING, cell));
  }
  const names = [...groups.keys()].sort(inOrder);
  const figures = names.map((name): PlaceFigure => {
    const own = groups.get(name) ?? NOTHING;
    const rest = names.filter((other) => other !== name).map((other) => groups.get(other) ?? NOTHING);
    const elsewhere = {
      df: rest.reduce((sum, { n }) => sum + Math.max(0, n - 1), 0),
      ss: rest.reduce((sum, { ss }) => sum + ss, 0),
    };
    const df = Math.max(0, own.n - 1);
    const { ratio, low, high, p } = sdRatio(
      { sd: df > 0 ? Math.sqrt(own.ss / df) : 0, df },
      { sd: elsewhere.df > 0 ? Math.sqrt(elsewhere.ss / elsewhere.df) : 0, df: elsewhere.df },
    );
    return {
      name,
      setups: own.n,
      setting: sdOf(df, own.ss, 'Two settings there are needed to see their scatter.'),
      mean: meanOf(own),
      repeatability: sdOf(
        own.readingDf,
        own.readingSs,
        'Nothing was read twice there with the gauge untouched.',
      ),
      ratio,
      low,
      high,
      p,
      lessSure: false,
    };
  });
  const adjusted = benjaminiHochberg(figures.flatMap(({ p }) => (p === null ? [] : [p])));
  let next = 0;
  return figures.map((figure) => {
    const p = figure.p === null ? null : (adjusted[next++] ?? null);
    return { ...figure, p, lessSure: p !== null && p <= FALSE_CALLS && (figure.ratio ?? 0) > 1 };
  });
}

type Totals = Pick<HandCell, 'n' | 'mean' | 'ss' | 'readingDf' | 'readingSs'>;
const NOTHING: Totals = { n: 0, mean: 0, ss: 0, readingDf: 0, readingSs: 0 };

const add = (a: Totals, b: Totals): Totals => ({
  ...mergeCollapsed(a, b),
  readingDf: a.readingDf + b.readingDf,
  readingSs: a.readingSs + b.readingSs,
});

function inOrder(a: string, b: string): number {
  const place = BANDS.indexOf(a) - BANDS.indexOf(b);
  return place !== 0 ? place : a < b ? -1 : a > b ? 1 : 0;
}

export function sdOf(df: number, ss: number, none: string): SdEstimate {
  if (df <= 0) return { sd: null, df: null, low: null, high: null, why: none };
  const sd = Math.sqrt(ss / df);
  return { sd, df, ...sdInterval(sd, df) };
}

export function meanOf({ n, mean, ss }: { n: number; mean: number; ss: number }): MeanEstimate {
  if (n === 0) return { mean: null, low: null, high: null, why: 'There is no setting there.' };
  if (n === 1) return { mean, low: null, high: null, why: 'One setting shows no scatter.' };
  return { mean, ...tInterval(mean, Math.sqrt(ss / (n - 1) / n), n - 1) };
}
