import type { NextRequest } from 'next/server';
import { admitToken, jobDocument, json, problem } from '@/lib/interface';

/** A job with its rounds and verdicts. */
export async function GET(
  request: NextRequest,
  { params }: { params: Promise<{ job: string }> },
): Promise<Response> {
  const { job } = await params;
  return admitToken(
    request,
    'reports:read',
    async ({ shop }) => {
      const document = await jobDocument(shop.id, decoded(job));
      return document === null ? problem(404, 'This shop has no job of this number.') : json(document);
    },
    '/api/v1/jobs/[job]',
  );
}

/** A number that is no proper address is no number of a job either. */
function decoded(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return '';
  }
}
