import { may, type Viewer } from '@/lib/access';
import { technicianAddress } from '@/app/_words/address';

/** An address and the name of its page. */
export type NamedPage = readonly [address: string, name: string];

/** The pages that the head leads to: those that this viewer may open. */
export function pagesFor(viewer: Viewer | null): NamedPage[] {
  if (viewer === null) return [];
  const all = may(viewer, 'see everybody’s figures');
  return [
    ...(all ? ([['/', 'Overview']] as const) : ([[technicianAddress(viewer.code), 'My hand']] as const)),
    ['/jobs', 'Jobs'],
    ...(all ? ([['/rates', 'Right first time']] as const) : []),
    ...(all
      ? ([
          ['/technicians', 'Technicians'],
          ['/training', 'Training'],
          ['/habits', 'Habits'],
        ] as const)
      : []),
    ['/trials', 'Trials'],
    ['/gauges', 'Gauges'],
    ['/calibration', 'Calibration'],
    ...(may(viewer, 'load files') ? ([['/load', 'Load']] as const) : []),
    ...(may(viewer, 'change settings') ? ([['/settings', 'Settings']] as const) : []),
  ];
}
