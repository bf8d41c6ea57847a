import type { Metadata } from 'next';
import { hear } from './speech';

/** Metadata of a page: its title in the reader's language. `generateMetadata = titled(() => words('load')('title'))` */
export const titled = (title: () => string) => async (): Promise<Metadata> => {
  await hear();
  return { title: title() };
};
