const TITLES: Record<number, string> = {
  400: 'Not understood',
  401: 'No valid token',
  403: 'The token is not good for this',
  404: 'Not there',
  413: 'Too large',
  415: 'Not a measurement file',
  422: 'The file is refused',
  429: 'Too many requests',
  500: 'The program failed',
  503: 'Not yet',
};

/** A refusal that programs can read (RFC 9457), with a sentence for people. */
export function problem(
  status: number,
  detail: string,
  more: { headers?: Record<string, string>; fields?: Record<string, unknown> } = {},
): Response {
  const body = { type: 'about:blank', title: TITLES[status] ?? 'Refused', status, detail, ...more.fields };
  return new Response(JSON.stringify(body), {
    status,
    headers: { 'Content-Type': 'application/problem+json', 'Cache-Control': 'no-store', ...more.headers },
  });
}

/** An answer in JSON that nobody keeps. */
export const json = (body: unknown, status = 200): Response =>
  Response.json(body, { status, headers: { 'Cache-Control': 'no-store' } });
