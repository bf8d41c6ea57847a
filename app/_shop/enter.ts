import { headers } from 'next/headers';
import { redirect } from 'next/navigation';
import { cache } from 'react';
import { hasAccounts, viewerOf, type Viewer } from '@/lib/identity';
import { PATH_HEADER } from '@/lib/shield';
import { hear } from '@/app/_words/speech';
import { address } from '@/app/_words/address';

/** Who looks at the page, asked once a page; null where nobody is signed in. */
export const viewerOrNull = cache(async (): Promise<Viewer | null> => viewerOf(await headers()));

/** Who looks at the page; whoever is not signed in is led to do so, and back here afterwards. */
export async function enter(): Promise<Viewer> {
  await hear();
  const viewer = await viewerOrNull();
  if (viewer !== null) return viewer;
  if (!(await hasAccounts())) redirect('/welcome');
  const path = (await headers()).get(PATH_HEADER) ?? '/';
  redirect(address('/sign-in', { to: path === '/' ? undefined : path }));
}
