import type { Role } from '@/lib/store';
import type { Viewer } from '@/lib/identity';

/** What is not everybody's, and whose it is. A technician has the own rounds and figures and the shop's band. */
export const MAY = {
  'see every round': ['trainer', 'manager'],
  'see everybody’s figures': ['trainer', 'manager'],
  'load files': ['trainer', 'manager'],
  'run trials': ['trainer', 'manager'],
  'keep gauges': ['trainer', 'manager'],
  'keep sheets': ['trainer', 'manager'],
  'see the trace': ['manager'],
  'manage people': ['manager'],
  'change settings': ['manager'],
} as const satisfies Record<string, readonly Role[]>;

export type Act = keyof typeof MAY;

export const may = (viewer: Pick<Viewer, 'role'>, act: Act): boolean =>
  (MAY[act] as readonly Role[]).includes(viewer.role);

/** Something was asked for that this viewer may not have. */
export class Refused extends Error {
  /** By this the framework answers with status 403 and the page that says so. */
  readonly digest = 'NEXT_HTTP_ERROR_FALLBACK;403';

  constructor(act: string) {
    super(`Not allowed: to ${act} takes another role in this shop. Ask the manager.`);
    this.name = 'Refused';
  }
}

/** @throws Refused */
export function demand(viewer: Pick<Viewer, 'role'>, act: Act): void {
  if (!may(viewer, act)) throw new Refused(act);
}
