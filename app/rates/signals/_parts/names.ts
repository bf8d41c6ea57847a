import { address, gaugeAddress, technicianAddress } from '@/app/_words/address';
import { subjectWords, type Series, type SignalChart, type Subject } from '@/lib/assess/signals';

export const SERIES_NAMES: Record<Series['what'], string> = {
  'right-first-time': 'Right first time',
  'setting-bias': 'Setting error, its mean',
  'setting-scatter': 'Setting error, its scatter',
};

export const chartName = ({ series: { what, subject } }: Pick<SignalChart, 'series'>): string =>
  `${SERIES_NAMES[what]}, ${subjectWords(subject)}`;

/** The anchor of a series within the page of signals, and its key in addresses. */
export const seriesKey = (what: Series['what'], { kind, name }: Subject): string =>
  `${what}-${kind}${name === null ? '' : `-${encodeURIComponent(name).replaceAll('%', '_')}`}`;

export const chartAddress = (what: Series['what'], subject: Subject): string =>
  `/rates/signals#${seriesKey(what, subject)}`;

/** Where the setups or jobs behind a series are opened. */
export function subjectAddress(what: Series['what'], { kind, name }: Subject): string {
  if (kind === 'technician' && name !== null)
    return what === 'right-first-time'
      ? address('/rates', { by: 'month', technician: name })
      : technicianAddress(name);
  if (kind === 'gauge' && name !== null) return gaugeAddress(name);
  return address('/rates', { by: 'month', sheet: name ?? undefined });
}
