import type { NextRequest } from 'next/server';
import { z } from 'zod';
import { fieldsOf, leadTo, sentence } from '@/app/_shop/admit';
import { comesFromElsewhere } from '@/app/_shop/same-origin';
import { saying } from '@/app/_shop/said';
import {
  chooseCredentials,
  LONGEST_PASSWORD,
  openInvitation,
  signIn,
  SignInNameTaken,
  takeUpInvitation,
} from '@/lib/identity';
import { answering } from '@/app/_words/speech';
import { words } from '@/app/_words/words';
import { told } from '@/app/_words/told';

const chosen = z.object({ signInName: z.string().max(100), password: z.string().max(LONGEST_PASSWORD + 1) });

/** Takes up an invitation and signs in. */
export const POST = (
  request: NextRequest,
  { params }: { params: Promise<{ token: string }> },
): Promise<Response> => answering(async () => take(request, (await params).token));

async function take(request: NextRequest, token: string): Promise<Response> {
  if (comesFromElsewhere(request)) return sentence(403, words('invitation')('elsewhere'));
  const place = `/invitation/${encodeURIComponent(token)}`;
  const { fields, refused } = await fieldsOf(request, chosen);
  if (refused !== null) return refused;
  if (fields === null || (await openInvitation(token)) === null) return leadTo(place);
  const credentials = await chooseCredentials(fields.signInName, fields.password);
  if (typeof credentials === 'string') return leadTo(place, [saying(told(credentials), place)]);
  try {
    if (!(await takeUpInvitation(token, credentials))) return leadTo(place);
  } catch (error) {
    if (error instanceof SignInNameTaken) return leadTo(place, [saying(told(error.message), place)]);
    throw error;
  }
  const answer = await signIn(credentials.signInName, fields.password, request.headers);
  return answer.kind === 'in' ? leadTo('/', answer.cookies) : leadTo('/sign-in');
}
