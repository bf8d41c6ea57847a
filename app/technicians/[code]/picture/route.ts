import type { NextRequest } from 'next/server';
import { pictureFile } from '@/app/_figures/download/files';
import { admit, sentence } from '@/app/_shop/admit';
import { quarterDrawing } from '@/app/technicians/_parts/quarter-drawing';
import { FOLLOWED, pointsOf } from '@/app/technicians/_parts/quarter-points';
import { holdsQuarter, spanFrom } from '@/app/technicians/_parts/span';
import { handAnswer } from '@/lib/access';

interface Context {
  params: Promise<{ code: string }>;
}

/** One figure of a technician by quarter (`of=`, within `from=` and `to=`) as a picture. */
export function GET(request: NextRequest, { params }: Context): Promise<Response> {
  return admit(request, async (viewer) => {
    const { code } = await params;
    const query = Object.fromEntries(request.nextUrl.searchParams);
    const followed = FOLLOWED.find(({ key }) => key === query.of);
    const hand = await handAnswer(viewer, code);
    if (followed === undefined || hand === null) return sentence(404, 'There is no such picture.');
    const { span } = spanFrom(query);
    const quarters = hand.quarters.filter(({ quarter }) => holdsQuarter(span, quarter));
    return pictureFile(
      `hand-${code}-${followed.key}`,
      `${followed.title} of ${code} by quarter, mm`,
      quarterDrawing(followed, pointsOf(quarters, followed)),
    );
  });
}
