import type { NextRequest } from 'next/server';
import { pictureFile } from '@/app/_figures/download/files';
import { admit, sentence } from '@/app/_shop/admit';
import { trialDrawing } from '@/app/trials/[id]/_parts/hanging-drawing';
import { ownDrawing } from '@/app/trials/[id]/_parts/own-drawing';
import { trialNumber } from '@/app/trials/_parts/trial-number';
import { unit } from '@/app/_words/numbers';
import { getTrial, may, ownPartOf } from '@/lib/access';

/** The hangings of a trial as a picture; of a technician the own ones, once it is closed. */
export async function GET(
  request: NextRequest,
  { params }: { params: Promise<{ id: string }> },
): Promise<Response> {
  const id = trialNumber((await params).id);
  return admit(request, async (viewer) => {
    const trial = id === null ? null : await getTrial(viewer, id);
    if (trial === null) return sentence(404, 'The shop has no such trial.');
    const title = `${trial.name}: deviations from the sheet, ${unit()}`;
    if (may(viewer, 'run trials'))
      return trial.readings === null
        ? sentence(409, 'You take part in this trial: enter your own readings first, or close it.')
        : pictureFile(`trial-${trial.id}`, title, trialDrawing(trial));
    const own = await ownPartOf(viewer, trial.id);
    return own === null
      ? sentence(409, 'Your figures are told once the trial is closed.')
      : pictureFile(`trial-${trial.id}-own`, title, ownDrawing(own, trial));
  });
}
