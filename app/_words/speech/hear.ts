import { cookies } from 'next/headers';
import { rememberForPage } from './heard';
import { speechFrom, type Speech } from './speech';

/** Takes up how the reader wants to be spoken to, from the cookies; every page and layout does so first. */
export async function hear(): Promise<Speech> {
  const kept = await cookies();
  const heard = speechFrom(kept.get('language')?.value, kept.get('units')?.value);
  rememberForPage(heard);
  return heard;
}
