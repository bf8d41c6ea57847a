import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { enter } from '@/app/_shop/enter';
import { WordsOnDevice } from '@/app/_words/on-device';
import { hear } from '@/app/_words/speech';
import { words } from '@/app/_words/words';
import { roundNumber } from '@/app/bay/_entries/round-number';
import { bayEntries, bayKnowledge, getBayRound } from '@/lib/access';
import { RoundScreen } from './_screen/round-screen';

export async function generateMetadata(): Promise<Metadata> {
  await hear();
  return { title: words('bay')('title') };
}

/** A round beside the vehicle: made here with what the shop has of it, and then led by the device. */
export default async function RoundPage({ params }: { params: Promise<{ round: string }> }) {
  const viewer = await enter();
  const id = roundNumber((await params).round);
  if (id === null) notFound();
  const [head, kept, knowledge] = await Promise.all([
    getBayRound(viewer, id),
    bayEntries(viewer, id, 0),
    bayKnowledge(viewer),
  ]);
  if (head === null) notFound();
  return (
    <WordsOnDevice parts={['bay']}>
      <RoundScreen
        key={id}
        {...{ head, kept, knowledge }}
        who={`${viewer.shop.id}.${viewer.code}`}
        code={viewer.code}
      />
    </WordsOnDevice>
  );
}
