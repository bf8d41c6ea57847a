import { told } from './told';

/** Why a figure is not to be had, as the analysis says it, in the reader's language; null where nothing is wanting. */
export const whyTold = (why: string | null): string | null => (why === null ? null : told(why));
