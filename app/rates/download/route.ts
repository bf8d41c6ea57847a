import type { NextRequest } from 'next/server';
import { csvFile } from '@/app/_figures/download/files';
import { admit, sentence } from '@/app/_shop/admit';
import { words } from '@/app/_words/words';
import { rateQuestion } from '../_parts/question';
import { ratesCsv } from '../_parts/rates-csv';
import { ratesFor } from '../_parts/rates-for';

/** The rates that the page shows for the same question, as CSV. */
export const GET = (request: NextRequest): Promise<Response> =>
  admit(request, async (viewer) => {
    const { question } = rateQuestion(Object.fromEntries(request.nextUrl.searchParams));
    const rates = await ratesFor(viewer, question);
    if (rates === null) return sentence(404, words('rates')('notYet'));
    return csvFile(`rates-by-${question.by}`, ratesCsv(rates));
  });
