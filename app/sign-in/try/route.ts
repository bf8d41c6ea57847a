import type { NextRequest } from 'next/server';
import { z } from 'zod';
import { fieldsOf, leadTo, sentence } from '@/app/_shop/admit';
import { comesFromElsewhere } from '@/app/_shop/same-origin';
import { wayBack } from '@/app/_shop/way-back';
import { address } from '@/app/_words/address';
import { LONGEST_PASSWORD, signIn } from '@/lib/identity';
import { answering } from '@/app/_words/speech';
import { words } from '@/app/_words/words';

const attempt = z.object({
  name: z.string().max(200),
  password: z.string().max(LONGEST_PASSWORD),
  to: z.string().optional(),
});

/** Signs in by name and password, or leads to the second factor, or back with the reason. */
export const POST = (request: NextRequest): Promise<Response> => answering(() => attend(request));

async function attend(request: NextRequest): Promise<Response> {
  if (comesFromElsewhere(request)) return sentence(403, words('signIn')('elsewhere'));
  const { fields, refused } = await fieldsOf(request, attempt);
  if (refused !== null) return refused;
  const to = wayBack(fields?.to);
  const back = (why: string, minutes?: number) =>
    leadTo(address('/sign-in', { refused: why, minutes, to: to === '/' ? undefined : to }));
  if (fields === null) return back('wrong');
  const answer = await signIn(fields.name, fields.password, request.headers);
  switch (answer.kind) {
    case 'in':
      return leadTo(to, answer.cookies);
    case 'code':
      return leadTo(address('/sign-in/code', { to: to === '/' ? undefined : to }), answer.cookies);
    case 'wait':
      return back('wait', Math.ceil(answer.seconds / 60));
    case 'refused':
      return back('wrong');
  }
}
