import type { NextRequest } from 'next/server';
import { jobQuery, questionFrom } from '@/app/jobs/_list/question';
import { CutOff, receive, TooLarge } from '@/app/load/_staging/receive';
import { openStaging } from '@/app/load/_staging/staging';
import { admitToken, problem, receiveMeasurements, sendMeasurements, type WriteDown } from '@/lib/interface';

const ROUTE = '/api/v1/measurements';

const writeDown: WriteDown = async (body, announced) => {
  const { path } = await openStaging();
  try {
    return { path, ...(await receive(body, path, announced)) };
  } catch (error) {
    if (error instanceof TooLarge) return problem(413, error.message);
    if (error instanceof CutOff) return problem(400, error.message);
    throw error;
  }
};

/** Loads a measurement file. */
export const POST = (request: NextRequest): Promise<Response> =>
  admitToken(
    request,
    'measurements:write',
    (holder) => receiveMeasurements(holder, request, writeDown),
    ROUTE,
  );

/** Readings, filtered as the list of jobs is. */
export const GET = (request: NextRequest): Promise<Response> =>
  admitToken(
    request,
    'measurements:read',
    (holder) => {
      const query = Object.fromEntries(request.nextUrl.searchParams);
      if (query.job !== undefined)
        return Promise.resolve(sendMeasurements(holder, { jobs: [query.job.slice(0, 80)] }));
      const { question, notes } = questionFrom(query);
      return Promise.resolve(
        notes.length > 0
          ? problem(400, notes.map((note) => note.replace(', so it was left out', '')).join(' '))
          : sendMeasurements(holder, jobQuery(question, holder.shop.timeZone)),
      );
    },
    ROUTE,
  );
