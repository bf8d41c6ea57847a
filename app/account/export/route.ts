import type { NextRequest } from 'next/server';
import { admit } from '@/app/_shop/admit';
import { personFile } from '@/app/_shop/person-file';
import { personalExport } from '@/lib/access';

/** All that the shop holds about the viewer. */
export function GET(request: NextRequest): Promise<Response> {
  return admit(request, async (viewer) => personFile(await personalExport(viewer, viewer.code), viewer.code));
}
