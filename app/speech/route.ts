import type { NextRequest } from 'next/server';
import { pageBefore } from '@/app/_shop/page-before';
import { languageFrom, unitsFrom } from '@/app/_words/speech/speech';

const YEAR = 365 * 24 * 3600;

/** Keeps the reader's choice of language or units in a cookie and returns to the page it was made on. */
export async function POST(request: NextRequest): Promise<Response> {
  const fields = await request.formData();
  const headers = new Headers({ Location: pageBefore(request) });
  const language = languageFrom(fields.get('language'));
  const units = unitsFrom(fields.get('units'));
  for (const [name, value] of Object.entries({ language, units }))
    if (value !== undefined)
      headers.append('Set-Cookie', `${name}=${value}; Path=/; Max-Age=${YEAR}; SameSite=Lax; HttpOnly`);
  return new Response(null, { status: 303, headers });
}
