import type { NextRequest } from 'next/server';
import { comesFromElsewhere } from '@/app/_shop/same-origin';
import { refreshSoon } from '@/lib/refresh';
import { getShop, saveReadings, StoreConflict, type SaveSummary, type Shop } from '@/lib/store';
import { readStagedFile } from '../../_staging/check';
import { FAULTS_KEPT, stagedId, type StagedFile } from '../../_staging/staged-file';
import { discardBytes, readStaged, saveStaged } from '../../_staging/staging';

/** Stores a staged file, all or nothing, and leads back to its page, which says what became of it. */
export async function POST(
  request: NextRequest,
  { params }: { params: Promise<{ file: string }> },
): Promise<Response> {
  const id = stagedId.safeParse((await params).file);
  if (comesFromElsewhere(request))
    return new Response('A file can only be confirmed from a page of this shop.', { status: 403 });
  const staged = id.success ? await readStaged(id.data) : null;
  if (!id.success || staged === null) return leadTo('/load?refused=gone');
  if (staged.result === null && staged.faultCount === 0) {
    const shop = await getShop();
    try {
      await saveStaged(id.data, await store(id.data, staged, shop));
    } catch (error) {
      console.error(`Loading ${staged.name} failed:`, error);
      return leadTo(`/load/${id.data}?failed=yes`);
    }
    await discardBytes(id.data);
    refreshSoon(shop.id);
  }
  return leadTo(`/load/${id.data}`);
}

async function store(id: string, staged: StagedFile, shop: Shop): Promise<StagedFile> {
  const { readings, faults, summary } = await readStagedFile(id, staged.name, shop);
  if (faults.length > 0)
    return { ...staged, faults: faults.slice(0, FAULTS_KEPT), faultCount: faults.length };
  try {
    const saved = await saveReadings(shop.id, readings, {
      name: staged.name,
      sha256: staged.sha256,
      lines: summary.lines,
    });
    return { ...staged, result: resultOf(saved) };
  } catch (error) {
    if (!(error instanceof StoreConflict)) throw error;
    return {
      ...staged,
      faults: error.conflicts
        .slice(0, FAULTS_KEPT)
        .map(({ line, column, reason }) => ({ line, column, message: reason, value: null })),
      faultCount: error.conflicts.length,
    };
  }
}

function resultOf({ jobs, ...saved }: SaveSummary): StagedFile['result'] {
  return { ...saved, jobs: jobs.length };
}

function leadTo(place: string): Response {
  return new Response(null, { status: 303, headers: { Location: place } });
}
