import type { NextRequest } from 'next/server';
import { admit, fieldsOf, leadTo } from '@/app/_shop/admit';
import { address, jobAddress } from '@/app/_words/address';
import { labelFrom } from '@/app/_words/parameters';
import { followNow, recordOutcome } from '@/lib/access';
import { whatWasSaid } from './what-was-said';

/** Keeps what a re-check showed, has verdicts and learning follow, and leads back to the round's evidence. */
export async function POST(
  request: NextRequest,
  { params }: { params: Promise<{ job: string }> },
): Promise<Response> {
  const job = labelFrom((await params).job);
  return admit(request, async (viewer) => {
    const { fields, refused } = await fieldsOf(request, whatWasSaid);
    if (refused !== null) return refused;
    if (fields === null) return leadBack(job, { outcome: 'incomplete' });
    const { round, height, cause, note } = fields;
    try {
      await recordOutcome(viewer, { job, ...height, cause, note });
    } catch (error) {
      if (!(error instanceof RangeError)) throw error;
      return leadBack(job, { round, outcome: 'unknown' });
    }
    await followNow(viewer, job);
    return leadBack(job, { round, outcome: 'recorded' });
  });
}

const leadBack = (job: string, query: Record<string, string>): Response =>
  leadTo(`${address(`${jobAddress(job)}/evidence`, query)}#outcome`);
