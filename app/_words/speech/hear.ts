import { cookies } from 'next/headers';
import { cache } from 'react';
import { rememberForPage, speaking } from './heard';
import { speechFrom, type Speech } from './speech';

/** Takes up how the reader wants to be spoken to, from the cookies; every page and layout does so first. */
export const hear = cache(async (): Promise<Speech> => {
  const kept = await cookies();
  const heard = speechFrom(kept.get('language')?.value, kept.get('units')?.value);
  rememberForPage(heard);
  return heard;
});

/** Does the work of an endpoint with the words and units of whoever asks; `admit` does so by itself. */
export const answering = async <Result>(work: () => Promise<Result>): Promise<Result> =>
  speaking(await hear(), work);
