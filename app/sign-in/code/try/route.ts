import type { NextRequest } from 'next/server';
import { z } from 'zod';
import { fieldsOf, leadTo, sentence } from '@/app/_shop/admit';
import { comesFromElsewhere } from '@/app/_shop/same-origin';
import { wayBack } from '@/app/_shop/way-back';
import { address } from '@/app/_words/address';
import { confirmCode } from '@/lib/identity';
import { answering } from '@/app/_words/speech';
import { words } from '@/app/_words/words';

const step = z.object({ code: z.string().max(60), to: z.string().optional() });

/** The second step of signing in. */
export const POST = (request: NextRequest): Promise<Response> => answering(() => attend(request));

async function attend(request: NextRequest): Promise<Response> {
  if (comesFromElsewhere(request)) return sentence(403, words('signIn')('elsewhere'));
  const { fields, refused } = await fieldsOf(request, step);
  if (refused !== null) return refused;
  const to = wayBack(fields?.to);
  const answer = await confirmCode(fields?.code ?? '', request.headers);
  if (answer.kind === 'in') return leadTo(to, answer.cookies);
  const minutes = answer.kind === 'wait' ? Math.ceil(answer.seconds / 60) : undefined;
  return leadTo(
    address('/sign-in/code', {
      refused: answer.kind === 'wait' ? 'wait' : 'code',
      minutes,
      to: to === '/' ? undefined : to,
    }),
  );
}
