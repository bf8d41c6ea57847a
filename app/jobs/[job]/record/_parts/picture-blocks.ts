import type { Block } from '@/app/_record';
import { NARROW } from '@/app/_figures/vehicle-picture';
import { drawingsOf, together } from '@/app/jobs/[job]/_picture/drawings';
import { words } from '@/app/_words/words';
import type { JobRecord } from './gather';

/** The vehicle from below and from the sides, before and after beside each other: the picture of the job's page. */
export function pictureBlocks({ scene }: JobRecord): Block[] {
  if (scene === null) return [];
  return [
    {
      kind: 'drawing',
      drawing: together(drawingsOf(scene, false, NARROW)),
      caption: words('record')('picture'),
    },
  ];
}
