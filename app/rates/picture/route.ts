import type { NextRequest } from 'next/server';
import { pictureFile } from '@/app/_figures/download/files';
import { admit, sentence } from '@/app/_shop/admit';
import { funnelDrawing } from '../_parts/funnel-drawing';
import { rateQuestion } from '../_parts/question';
import { ratesFor } from '../_parts/rates-for';
import { filterWords, GROUPING_NAMES } from '../_parts/words';

/** The funnel that the page shows for the same question, as a picture. */
export const GET = (request: NextRequest): Promise<Response> =>
  admit(request, async (viewer) => {
    const { question } = rateQuestion(Object.fromEntries(request.nextUrl.searchParams));
    const rates = await ratesFor(viewer, question);
    if (rates === null) return sentence(404, 'The rates are not worked out yet. Try again in a minute.');
    const title = `Right first time by ${GROUPING_NAMES[question.by].toLowerCase()}: ${filterWords(question)}`;
    return pictureFile(`funnel-by-${question.by}`, title, funnelDrawing(rates));
  });
