import type { NextRequest } from 'next/server';
import { csvFile } from '@/app/_figures/download/files';
import { admit, sentence } from '@/app/_shop/admit';
import { whyTold } from '@/app/_words/why';
import { words } from '@/app/_words/words';
import { inOrder } from '@/app/_words/in-order';
import { everybodysFigures } from '@/lib/access';

/** Repeatability, setting and bias of every technician with their intervals, the shop's beside them, as CSV. */
export const GET = (request: NextRequest): Promise<Response> =>
  admit(request, async (viewer) => {
    const fit = await everybodysFigures(viewer);
    if (fit === null) return sentence(404, words('technicians')('notYet'));
    const { technicians, shop } = fit.figures;
    return csvFile('technicians', {
      columns: [
        ...['technician', 'figure', 'value_mm', 'low_95', 'high_95'],
        ...['shop_low_95', 'shop_high_95', 'setups', 'why_none'],
      ],
      rows: [...technicians]
        .sort((a, b) => inOrder(a.technician, b.technician))
        .flatMap(({ technician, repeatability, setting, bias, setups }) => [
          ...(['repeatability', 'setting'] as const).map((name) => {
            const { sd, low, high, why } = { repeatability, setting }[name];
            return [technician, name, sd, low, high, shop[name].low, shop[name].high, setups, whyTold(why)];
          }),
          [technician, 'bias', bias.mean, bias.low, bias.high, null, null, setups, whyTold(bias.why)],
        ]),
    });
  });
