import type { NextRequest } from 'next/server';
import { z } from 'zod';
import { admit, sentence } from '@/app/_shop/admit';
import { personFile } from '@/app/_shop/person-file';
import { demand, personalExport } from '@/lib/access';
import { words } from '@/app/_words/words';

const whom = z.string().min(1).max(80);

/** All that the shop holds about one person, for the manager to hand over. */
export function GET(request: NextRequest): Promise<Response> {
  return admit(request, async (viewer) => {
    demand(viewer, 'manage people');
    const code = whom.safeParse(request.nextUrl.searchParams.get('code'));
    const document = code.success ? await personalExport(viewer, code.data) : null;
    if (!code.success || document === null) return sentence(404, words('settings')('people.nobody'));
    return personFile(document, code.data);
  });
}
