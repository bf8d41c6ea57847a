import type { BayRecord } from '@/lib/bay';

/** Whose, and which round. */
export interface Whose {
  who: string;
  /** The person's code, as entries name it. */
  code: string;
  round: number;
}

/** What an entry is made from, as it stands in the moment it is kept: another tab may have been quicker. */
export interface Standing {
  record: BayRecord;
  /** Label of the next setup, and of those after it. */
  labels: () => string;
}

/** Nothing was kept: the moment before, another tab or device did what was to be done. */
export class DoneAlready extends Error {}

/** The round is not on this device (any more): it has to be taken up first. */
export class NotHere extends Error {}
