import type { NextRequest } from 'next/server';
import { z } from 'zod';
import { admit, fieldsOf, leadTo } from '@/app/_shop/admit';
import { saying } from '@/app/_shop/said';
import { changePassword, LONGEST_PASSWORD, passwordFault } from '@/lib/identity';
import { words } from '@/app/_words/words';
import { told } from '@/app/_words/told';

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
    const t = words('account');
    if (viewer.shop.demo) return tell(t('password.demo'));
    if (fields === null) return tell(t('password.incomplete'));
    const fault = passwordFault(fields.next, viewer.signInName);
    if (fault !== null) return tell(t('password.fault', { fault: told(fault) }));
    const cookies = await changePassword(fields.present, fields.next, request.headers);
    return cookies === null ? tell(t('password.wrong')) : tell(t('password.changed'), cookies);
  });
}
