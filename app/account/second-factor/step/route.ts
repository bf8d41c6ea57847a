import type { NextRequest } from 'next/server';
import { z } from 'zod';
import { admit, fieldsOf, leadTo } from '@/app/_shop/admit';
import { saying } from '@/app/_shop/said';
import { confirmSecondFactor, dropSecondFactor, LONGEST_PASSWORD, offerSecondFactor } from '@/lib/identity';

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
    if (viewer.shop.demo) return again('The demo shop is open to all: it has no second factor.');
    if (fields === null) return again('Nothing was changed: something was left out.');
    const { proof } = fields;
    switch (fields.step) {
      case 'begin':
        return (await offerSecondFactor(proof, request.headers)) === null
          ? again('That is not your password.')
          : leadTo(PLACE);
      case 'confirm': {
        const cookies = await confirmSecondFactor(proof.replaceAll(/\s/g, ''), request.headers);
        return cookies === null
          ? again('That code is not right, or it has run out. Type the one that shows now.')
          : done('The second factor is asked for from now on.', cookies);
      }
      case 'drop': {
        const cookies = await dropSecondFactor(proof, request.headers);
        return cookies === null
          ? again('That is not your password.')
          : done('The second factor is taken away.', cookies);
      }
    }
  });
}
