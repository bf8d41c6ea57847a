import type { NextRequest } from 'next/server';
import { pictureFile } from '@/app/_figures/download/files';
import { admit, sentence } from '@/app/_shop/admit';
import { words } from '@/app/_words/words';
import { askedHand } from '@/app/technicians/_parts/asked-hand';
import { handPicture } from '@/app/technicians/_parts/hand-pictures';
import { currentFigures } from '@/lib/access';

interface Context {
  params: Promise<{ code: string }>;
}

/** One chart of a technician (`of=`) as a picture; held as the page is. */
export function GET(request: NextRequest, { params }: Context): Promise<Response> {
  return admit(request, async (viewer) => {
    const { code } = await params;
    const query = Object.fromEntries(request.nextUrl.searchParams);
    const [asked, fit] = await Promise.all([askedHand(viewer, code, query), currentFigures(viewer)]);
    const picture = handPicture(query.of, code, asked, {
      own: fit?.figures.technicians.find(({ technician }) => technician === code) ?? null,
      band: fit?.figures.shop ?? null,
    });
    if (picture === null) return sentence(404, words('hand')('noPicture'));
    return pictureFile(`hand-${code}-${query.of ?? ''}`, picture.title, picture.drawing);
  });
}
