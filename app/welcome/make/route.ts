import { IANAZone } from 'luxon';
import type { NextRequest } from 'next/server';
import { z } from 'zod';
import { fieldsOf, leadTo, sentence } from '@/app/_shop/admit';
import { comesFromElsewhere } from '@/app/_shop/same-origin';
import { saying } from '@/app/_shop/said';
import { shopFields } from '@/app/_shop/shop-fields';
import { address } from '@/app/_words/address';
import { chooseCredentials, isSetUpKey, LONGEST_PASSWORD, makeFirstManager, signIn } from '@/lib/identity';
import { answering } from '@/app/_words/speech';
import { words } from '@/app/_words/words';
import { told } from '@/app/_words/told';

const line = (most: number) => z.string().trim().min(1).max(most);
const setUp = z.object({
  key: z.string().max(100),
  ...shopFields,
  name: line(80),
  code: line(20),
  signInName: z.string().max(100),
  password: z.string().max(LONGEST_PASSWORD + 1),
});

/** Makes the first manager, once, and signs them in. */
export const POST = (request: NextRequest): Promise<Response> => answering(() => make(request));

async function make(request: NextRequest): Promise<Response> {
  const t = words('welcome');
  if (comesFromElsewhere(request)) return sentence(403, t('elsewhere'));
  const { fields, refused } = await fieldsOf(request, setUp);
  if (refused !== null) return refused;
  if (fields === null || !isSetUpKey(fields.key)) return leadTo('/welcome');
  const { key, password, signInName, ...said } = fields;
  const back = (fault: string) => leadTo(address('/welcome', { key }), [saying(fault, '/welcome')]);
  if (!IANAZone.isValidZone(said.timeZone)) return back(t('noTimeZone', { written: said.timeZone }));
  const credentials = await chooseCredentials(signInName, password);
  if (typeof credentials === 'string') return back(told(credentials));
  if (!(await makeFirstManager({ ...said, ...credentials }))) return leadTo('/sign-in');
  const answer = await signIn(credentials.signInName, password, request.headers);
  return answer.kind === 'in' ? leadTo('/', answer.cookies) : leadTo('/sign-in');
}
