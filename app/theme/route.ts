import type { NextRequest } from 'next/server';
import { themeFrom } from '@/app/_look/theme';
import { pageBefore } from '@/app/_shop/page-before';

const YEAR = 365 * 24 * 3600;

/** Keeps the reader's choice of light or dark in a cookie and returns to the page it was made on. */
export async function POST(request: NextRequest): Promise<Response> {
  const theme = themeFrom((await request.formData()).get('theme'));
  return new Response(null, {
    status: 303,
    headers: {
      Location: pageBefore(request),
      'Set-Cookie': `theme=${theme}; Path=/; Max-Age=${YEAR}; SameSite=Lax; HttpOnly`,
    },
  });
}
