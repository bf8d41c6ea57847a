import Link from 'next/link';
import { technicianAddress } from '@/app/_words/address';
import { may, type Viewer } from '@/lib/access';

/** The one hand a reader may open, by its code; null where it is everybody's. Plain: what is drawn from it can be kept. */
export type Hands = string | null;

export const handsOf = (viewer: Viewer): Hands =>
  may(viewer, 'see everybody’s figures') ? null : viewer.code;

/** A technician's code; it leads to the figures of that hand where the reader may have them. */
export function HandLink({ code, hands }: { code: string; hands: Hands }) {
  if (hands !== null && hands !== code) return <>{code}</>;
  return (
    <Link href={technicianAddress(code)} prefetch={false}>
      {code}
    </Link>
  );
}
