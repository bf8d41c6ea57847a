import type { NextRequest } from 'next/server';
import { pictureFile } from '@/app/_figures/download/files';
import { admit, sentence } from '@/app/_shop/admit';
import { labelFrom } from '@/app/_words/parameters';
import { words } from '@/app/_words/words';
import { getJob, roundVerdicts } from '@/lib/access';
import { drawingsOf, together } from '../_picture/drawings';
import { pictureOf } from '../_picture/of-job';

/** The picture that the job's page shows for the same choice, as a file. */
export const GET = async (
  request: NextRequest,
  { params }: { params: Promise<{ job: string }> },
): Promise<Response> => {
  const number = labelFrom((await params).job);
  return admit(request, async (viewer) => {
    const t = words('jobs');
    const [job, verdicts] = await Promise.all([
      getJob(viewer, number),
      roundVerdicts(viewer, { job: number }),
    ]);
    const query = Object.fromEntries(request.nextUrl.searchParams);
    const picture = job && (await pictureOf(viewer, job, verdicts, query));
    if (picture === null) return sentence(404, t('picture.noJob', { job: number }));
    if (picture.scene === null) return sentence(404, t('picture.nothing'));
    return pictureFile(
      `job-${number}-${picture.shown.choice}`,
      t('picture.of', { job: number }),
      together(drawingsOf(picture.scene, picture.shown.over)),
    );
  });
};
