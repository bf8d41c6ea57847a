import { address, gaugeAddress, technicianAddress } from '@/app/_words/address';
import { words } from '@/app/_words/words';
import type { Series, SignalChart, Subject } from '@/lib/assess/signals';

/** `Right first time, gauge CG4` */
export function chartName({ series: { what, subject } }: Pick<SignalChart, 'series'>): string {
  const t = words('rates');
  const series = t(`signals.what.${what}`);
  const { kind, name } = subject;
  return kind === 'shop' || name === null
    ? t('signals.series.shop', { what: series })
    : t(`signals.series.${kind}`, { what: series, name });
}

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
