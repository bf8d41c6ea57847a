import type { NextRequest } from 'next/server';
import { csvFile } from '@/app/_figures/download/files';
import { admit, sentence } from '@/app/_shop/admit';
import { rateQuestion } from '../_parts/question';
import { ratesCsv } from '../_parts/rates-csv';
import { ratesFor } from '../_parts/rates-for';

/** The rates that the page shows for the same question, as CSV. */
export const GET = (request: NextRequest): Promise<Response> =>
  admit(request, async (viewer) => {
    const { question } = rateQuestion(Object.fromEntries(request.nextUrl.searchParams));
    const rates = await ratesFor(viewer, question);
    if (rates === null) return sentence(404, 'The rates are not worked out yet. Try again in a minute.');
    return csvFile(`rates-by-${question.by}`, ratesCsv(rates));
  });
