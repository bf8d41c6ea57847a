import { may, type Viewer } from '@/lib/access';
import { technicianAddress } from '@/app/_words/address';
import { words } from '@/app/_words/words';

/** An address and the name of its page. */
export type NamedPage = readonly [address: string, name: string];

/** The pages that the head leads to: those that this viewer may open. */
export function pagesFor(viewer: Viewer | null): NamedPage[] {
  if (viewer === null) return [];
  const t = words('look');
  const all = may(viewer, 'see everybody’s figures');
  return [
    ...(all
      ? ([['/', t('navigation.overview')]] as const)
      : ([[technicianAddress(viewer.code), t('navigation.hand')]] as const)),
    ['/bay', t('navigation.bay')],
    ['/jobs', t('navigation.jobs')],
    ...(all ? ([['/rates', t('navigation.rates')]] as const) : []),
    ...(all
      ? ([
          ['/technicians', t('navigation.technicians')],
          ['/training', t('navigation.training')],
          ['/habits', t('navigation.habits')],
        ] as const)
      : []),
    ['/trials', t('navigation.trials')],
    ['/gauges', t('navigation.gauges')],
    ['/sheets', t('navigation.sheets')],
    ['/calibration', t('navigation.calibration')],
    ...(may(viewer, 'load files') ? ([['/load', t('navigation.load')]] as const) : []),
    ...(may(viewer, 'change settings') ? ([['/settings', t('navigation.settings')]] as const) : []),
  ];
}
