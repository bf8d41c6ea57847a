import type { NextRequest } from 'next/server';
import { leadTo, sentence } from '@/app/_shop/admit';
import { comesFromElsewhere } from '@/app/_shop/same-origin';
import { signOut } from '@/lib/identity';

/** Ends the session of this browser. */
export async function POST(request: NextRequest): Promise<Response> {
  if (comesFromElsewhere(request)) return sentence(403, 'Sign out on a page of this shop.');
  return leadTo('/sign-in', await signOut(request.headers));
}
