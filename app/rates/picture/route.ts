import type { NextRequest } from 'next/server';
import { pictureFile } from '@/app/_figures/download/files';
import { admit, sentence } from '@/app/_shop/admit';
import { words } from '@/app/_words/words';
import { funnelDrawing } from '../_parts/funnel-drawing';
import { rateQuestion } from '../_parts/question';
import { ratesFor } from '../_parts/rates-for';
import { filterWords, groupingInSentence } from '../_parts/words';

/** The funnel that the page shows for the same question, as a picture. */
export const GET = (request: NextRequest): Promise<Response> =>
  admit(request, async (viewer) => {
    const { question } = rateQuestion(Object.fromEntries(request.nextUrl.searchParams));
    const rates = await ratesFor(viewer, question);
    if (rates === null) return sentence(404, words('rates')('notYet'));
    const title = words('rates')('funnel.picture', {
      by: groupingInSentence(question.by),
      counted: filterWords(question),
    });
    return pictureFile(`funnel-by-${question.by}`, title, funnelDrawing(rates));
  });
