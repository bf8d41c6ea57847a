import type { NextRequest } from 'next/server';
import { z } from 'zod';
import { admit, fieldsOf, leadTo } from '@/app/_shop/admit';
import { saying } from '@/app/_shop/said';
import { confirmSecondFactor, dropSecondFactor, LONGEST_PASSWORD, offerSecondFactor } from '@/lib/identity';
import { words } from '@/app/_words/words';

const PLACE = '/account/second-factor';

const step = z.object({
  step: z.enum(['begin', 'confirm', 'drop']),
  /** The password, or the code of the authenticator. */
  proof: z.string().min(1).max(LONGEST_PASSWORD),
});

const again = (why: string) => leadTo(PLACE, [saying(why, PLACE)]);
const done = (text: string, cookies: readonly string[]) =>
  leadTo('/account', [saying(text, '/account'), ...cookies]);

/** One step of setting a second factor up, or taking it away. */
export function POST(request: NextRequest): Promise<Response> {
  return admit(request, async (viewer) => {
    const { fields, refused } = await fieldsOf(request, step);
    if (refused !== null) return refused;
    const t = words('account');
    if (viewer.shop.demo) return again(t('step.demo'));
    if (fields === null) return again(t('step.incomplete'));
    const { proof } = fields;
    switch (fields.step) {
      case 'begin':
        return (await offerSecondFactor(proof, request.headers)) === null
          ? again(t('step.wrongPassword'))
          : leadTo(PLACE);
      case 'confirm': {
        const cookies = await confirmSecondFactor(proof.replaceAll(/\s/g, ''), request.headers);
        return cookies === null ? again(t('step.wrongCode')) : done(t('step.confirmed'), cookies);
      }
      case 'drop': {
        const cookies = await dropSecondFactor(proof, request.headers);
        return cookies === null ? again(t('step.wrongPassword')) : done(t('step.dropped'), cookies);
      }
    }
  });
}
