import type { NextRequest } from 'next/server';
import { leadTo, sentence } from '@/app/_shop/admit';
import { comesFromElsewhere } from '@/app/_shop/same-origin';
import { signOut } from '@/lib/identity';
import { answering } from '@/app/_words/speech';
import { words } from '@/app/_words/words';

/** Ends the session of this browser. */
export const POST = (request: NextRequest): Promise<Response> =>
  answering(async () => {
    if (comesFromElsewhere(request)) return sentence(403, words('signIn')('outElsewhere'));
    return leadTo('/sign-in', await signOut(request.headers));
  });
