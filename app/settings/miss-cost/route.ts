import type { NextRequest } from 'next/server';
import { admit, fieldsOf, leadTo } from '@/app/_shop/admit';
import { setMissCost } from '@/lib/access';
import { missCostForm } from './form';

/** Keeps what the manager says missing damage costs, and leads back to the settings. */
export function POST(request: NextRequest): Promise<Response> {
  return admit(request, async (viewer) => {
    const { fields, refused } = await fieldsOf(request, missCostForm);
    if (refused !== null) return refused;
    if (fields === null) return leadTo('/settings?answer=refused');
    await setMissCost(viewer, fields.cost);
    return leadTo('/settings?answer=kept');
  });
}
