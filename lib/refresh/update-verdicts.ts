import type { RoundVerdict } from '@/lib/assess';
import type { Crew } from '@/lib/assess/crew/crew';
import { loadJobs, saveRoundVerdicts, sheetBook, type ShopId } from '@/lib/store';
import { inTurns } from './in-turns';
import { asJson, type StoredFit } from './stored-fit';
import { unreadLengths } from './unread-lengths';
import { WaitingRounds, type WaitingRound } from './waiting-rounds';

/**
 * Judges rounds that have no verdict by this fit yet.
 * @returns how many were judged.
 */
export async function updateVerdicts(
  shop: ShopId,
  fit: StoredFit,
  rounds: readonly WaitingRound[],
  crew: Crew,
): Promise<number> {
  const waiting = new WaitingRounds(rounds);
  const sheets = await sheetBook(shop);
  const { learned } = fit;
  let judged = 0;
  await inTurns(waiting.jobs(), {
    take: async (jobs) => waiting.of(await loadJobs(shop, { jobs: [...jobs] })),
    work: (rounds) =>
      crew.assess({
        rounds: rounds.map(({ round }) => ({ round, unread: unreadLengths(round, sheets) })),
        learned,
      }),
    keep: async (rounds, verdicts) => {
      const dated = verdicts.flatMap((verdict: RoundVerdict, i) => {
        const version = rounds[i]?.version;
        return version === undefined ? [] : [datedVerdict(verdict, version)];
      });
      await saveRoundVerdicts(shop, fit.id, dated);
      judged += dated.length;
    },
  });
  return judged;
}

/** A verdict as it is kept, with the version of the readings that it was made from. */
export const datedVerdict = (verdict: RoundVerdict, version: number) => ({
  ...verdict,
  document: asJson(verdict),
  version,
});
