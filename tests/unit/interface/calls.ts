import { NextRequest } from 'next/server';

/** A request of a program as it reaches an endpoint. */
export function call(
  path: string,
  token: string | null,
  more: { body?: string; type?: string } = {},
): NextRequest {
  const { body, type = 'text/csv' } = more;
  return new NextRequest(`http://localhost${path}`, {
    headers: {
      ...(token !== null && { authorization: `Bearer ${token}` }),
      ...(body !== undefined && { 'content-type': type, 'content-length': String(Buffer.byteLength(body)) }),
    },
    ...(body !== undefined && { method: 'POST', body }),
  });
}

export const fields = async (response: Response): Promise<Record<string, unknown>> =>
  (await response.json()) as Record<string, unknown>;
