import type { NextRequest } from 'next/server';
import { admit, leadTo } from '@/app/_shop/admit';
import { saying } from '@/app/_shop/said';
import { told } from '@/app/_words/told';
import { words } from '@/app/_words/words';
import { closeTrial, demand } from '@/lib/access';
import { trialNumber } from '@/app/trials/_parts/trial-number';
import { trialAddress } from '@/app/trials/_parts/words';

/** Ends the entering of readings. */
export async function POST(
  request: NextRequest,
  { params }: { params: Promise<{ id: string }> },
): Promise<Response> {
  const id = trialNumber((await params).id);
  return admit(request, async (viewer) => {
    demand(viewer, 'run trials');
    if (id === null) return leadTo('/trials');
    const place = trialAddress(id);
    try {
      await closeTrial(viewer, id);
      return leadTo(place, [saying(words('trials')('trial.isClosed'), place)]);
    } catch (error) {
      if (error instanceof RangeError) return leadTo(place, [saying(told(error.message), place)]);
      throw error;
    }
  });
}
