import type { RoundVerdict } from '@/lib/assess';
import { foundOf } from '@/lib/assess/habits';
import { currentAnswer, currentFigures } from '@/lib/refresh';
import { batchReportStream } from '@/lib/reports';
import { binomialInterval } from '@/lib/stats';
import { countOutcomes, type ShopId } from '@/lib/store';
import { verdictsInOrder } from '@/lib/store/reports';

/**
 * The batch report of a shop from its stored figures and verdicts, as JSON text in pieces; null while there are no
 * figures yet.
 */
export async function storedReport(shop: ShopId): Promise<AsyncGenerator<string, void, undefined> | null> {
  const current = await currentFigures(shop);
  if (current === null) return null;
  const [counted = { jobs: 0, right: 0 }] = await countOutcomes(shop, 'shop');
  const { technicians, gauges } = current.figures;
  const cells = (await currentAnswer(shop, 'habits')) ?? [];
  return batchReportStream({
    technicians: technicians.map((one) => ({ ...one, habits: foundOf(cells, one.technician) })),
    gauges,
    firstTimeRight: rateOf(counted),
    rounds: () => verdicts(shop),
  });
}

async function* verdicts(shop: ShopId): AsyncGenerator<RoundVerdict, void, undefined> {
  // The document is the verdict that this program stored.
  for await (const document of verdictsInOrder(shop)) yield document as unknown as RoundVerdict;
}

function rateOf({ jobs, right }: { jobs: number; right: number }) {
  if (jobs === 0) {
    const why = 'No job has a first measuring after the repair.';
    return { jobs, right, rate: null, low: null, high: null, why };
  }
  const { low, high } = binomialInterval(right, jobs, { method: 'wilson', level: 0.95 });
  return { jobs, right, rate: right / jobs, low, high, why: null };
}
