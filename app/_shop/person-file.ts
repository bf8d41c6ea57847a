import type { Json } from '@/lib/access';

/** All that concerns one person, as a file to keep. */
export const personFile = (document: Json, code: string): Response =>
  new Response(`${JSON.stringify(document, null, 2)}\n`, {
    headers: {
      'Content-Type': 'application/json; charset=utf-8',
      'Content-Disposition': `attachment; filename="person-${code.replaceAll(/[^A-Za-z0-9-]/g, '-')}.json"`,
      'Cache-Control': 'no-store',
    },
  });
