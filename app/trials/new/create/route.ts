import { randomInt } from 'node:crypto';
import type { NextRequest } from 'next/server';
import { z } from 'zod';
import { admit, fieldsOf, leadTo } from '@/app/_shop/admit';
import { saying } from '@/app/_shop/said';
import { address } from '@/app/_words/address';
import { told } from '@/app/_words/told';
import { words } from '@/app/_words/words';
import { createTrial, demand, expectedScatter, listPeople } from '@/lib/access';
import { trialAddress } from '@/app/trials/_parts/words';
import { planFrom } from '../_parts/plan-fields';

const PLACE = '/trials/new';
const SEEDS = 0x7fff_ffff;
const form = z.record(z.string().max(100), z.string().max(200));

/** Keeps a plan; one that cannot be kept leads back to the form as it was filled. */
export function POST(request: NextRequest): Promise<Response> {
  return admit(request, async (viewer) => {
    demand(viewer, 'run trials');
    const { fields, refused } = await fieldsOf(request, form);
    if (refused !== null) return refused;
    const back = (text: string) => leadTo(address(PLACE, fields ?? {}), [saying(text, PLACE)]);
    if (fields === null) return back(words('trials')('plan.noPlan'));
    const people = (await listPeople(viewer)).filter(({ active }) => active).map(({ code }) => code);
    const { plan } = planFrom(fields, people, viewer.shop.defaultTolerance);
    if (plan === null) return leadTo(address(PLACE, { asked: 'none', ...fields }));
    const { expected } = await expectedScatter(viewer);
    try {
      const id = await createTrial(viewer, {
        name: fields.name ?? '',
        plan: { ...plan, expected, seed: randomInt(SEEDS) },
      });
      return leadTo(trialAddress(id));
    } catch (error) {
      if (error instanceof RangeError)
        return back(words('trials')('plan.notCreated', { fault: told(error.message) }));
      throw error;
    }
  });
}
