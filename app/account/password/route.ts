import type { NextRequest } from 'next/server';
import { z } from 'zod';
import { admit, fieldsOf, leadTo } from '@/app/_shop/admit';
import { saying } from '@/app/_shop/said';
import { changePassword, LONGEST_PASSWORD, passwordFault } from '@/lib/identity';

const change = z.object({
  present: z.string().max(LONGEST_PASSWORD),
  next: z.string().max(LONGEST_PASSWORD + 1),
});

const tell = (text: string, cookies: readonly string[] = []) =>
  leadTo('/account', [saying(text, '/account'), ...cookies]);

/** Changes the viewer's own password. */
export function POST(request: NextRequest): Promise<Response> {
  return admit(request, async (viewer) => {
    const { fields, refused } = await fieldsOf(request, change);
    if (refused !== null) return refused;
    if (viewer.shop.demo) return tell('Nothing was changed: the passwords of the demo shop are public.');
    if (fields === null) return tell('Nothing was changed: write the present password and a new one.');
    const fault = passwordFault(fields.next, viewer.signInName);
    if (fault !== null) return tell(`Nothing was changed. ${fault}`);
    const cookies = await changePassword(fields.present, fields.next, request.headers);
    return cookies === null
      ? tell('Nothing was changed: the present password is not right.')
      : tell('The password is changed, and every other session is ended.', cookies);
  });
}
