import { subjectOf } from '@/lib/store/trace/subjects';
import { writeTrace } from '@/lib/store/trace/write-trace';
import type { Taking } from './taking';

/** Ends a round, once; what another device sends later is taken all the same. */
export async function finishRound({ queries, shop, round, actor, now }: Taking): Promise<void> {
  const { id, job, stage, attempt, finishedAt } = round;
  if (finishedAt !== null) return;
  await queries.bayRound.update({ where: { id }, data: { finishedAt: now } });
  await writeTrace(queries, shop, actor, {
    action: 'finished',
    kind: 'bay round',
    subject: subjectOf.round(job, stage, attempt),
  });
}
