import type { NextRequest } from 'next/server';
import { z } from 'zod';
import { byteStream } from '@/lib/interface';
import { measurementFileText } from '@/lib/measure';
import { jobQuery, questionFrom } from '../_list/question';
import { readingsFor } from '@/lib/access';
import { admit } from '@/app/_shop/admit';

/** Streams the readings of one job (`job=`) or of every job that the list's filter shows, as a measurement file. */
export function GET(request: NextRequest): Promise<Response> {
  return admit(request, (viewer) => {
    const query = Object.fromEntries(request.nextUrl.searchParams);
    const job = z.string().min(1).max(80).safeParse(query.job);
    const { question } = questionFrom(query);
    const filter = job.success ? { jobs: [job.data] } : jobQuery(question, viewer.shop.timeZone);
    const stream = byteStream(measurementFileText(readingsFor(viewer, filter)));
    return Promise.resolve(
      new Response(stream, {
        headers: {
          'Content-Type': 'text/csv; charset=utf-8',
          'Content-Disposition': `attachment; filename="${job.success ? `job-${plain(job.data)}` : 'measurements'}.csv"`,
          'Cache-Control': 'no-store',
        },
      }),
    );
  });
}

/** A label as a file name: letters, digits and dashes only. */
function plain(label: string): string {
  return label.replaceAll(/[^A-Za-z0-9-]+/g, '-');
}
