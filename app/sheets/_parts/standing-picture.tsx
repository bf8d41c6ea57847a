import { drawnOnce } from '@/app/_look/still';
import { speech } from '@/app/_words/speech';
import { words } from '@/app/_words/words';
import { SheetPicture } from '@/app/sheets/_drawing/sheet-picture';
import type { SheetRows } from '@/lib/measure/sheet';
import { sayer } from './say';

interface StandingPictureProps {
  rows: SheetRows;
  /** Places in the list of those lengths that cannot fit. */
  unfit: readonly number[];
}

/** A sheet as it stands, drawn. */
export const StandingPicture = drawnOnce(function StandingPicture({ rows, unfit }: StandingPictureProps) {
  return <SheetPicture rows={rows} unfit={new Set(unfit)} say={sayer(words('sheets'))} speech={speech()} />;
});
