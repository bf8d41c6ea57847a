import type { NextRequest } from 'next/server';
import { z } from 'zod';
import { admit, sentence } from '@/app/_shop/admit';
import { reportMade } from '@/lib/access';
import { words } from '@/app/_words/words';

/** A report that made itself, as a file. */
export async function GET(
  request: NextRequest,
  { params }: { params: Promise<{ id: string }> },
): Promise<Response> {
  const id = z.coerce
    .number()
    .int()
    .min(1)
    .max(2_147_483_647)
    .safeParse((await params).id);
  return admit(request, async (viewer) => {
    const found = await reportMade(viewer, id.data ?? 0);
    if (found === null) return sentence(404, words('settings')('report.gone'));
    const day = new Date(found.dueAt).toISOString().slice(0, 10);
    return Response.json(found.document, {
      headers: {
        'Content-Disposition': `attachment; filename="report-${day}.json"`,
        'Cache-Control': 'no-store',
      },
    });
  });
}
