import type { Queries } from '@/lib/store/connection/database';
import { subjectOf } from '@/lib/store/trace/subjects';
import { writeTrace } from '@/lib/store/trace/write-trace';
import type { Actor, ShopId, SourceFile } from '@/lib/store/types';

/** What a file brought. */
interface Brought {
  added: number;
  alreadyThere: number;
  causes: number;
  jobs: number;
}

/** The row of a file, written with the first thing of it that is stored, and what is told of it in the trace. */
export class FileBeingSaved {
  #id: number | null = null;
  #isNew = false;

  constructor(
    private readonly queries: Queries,
    private readonly shop: ShopId,
    private file: SourceFile,
  ) {}

  /**
   * Gives a file that was begun to be stored before it was read the digest and the length that it turned out to have.
   * @returns false where a file of this digest was stored before.
   */
  async turnedOut(sha256: string, lines: number): Promise<boolean> {
    const id = await this.id();
    const { queries, shop } = this;
    const there = await queries.loadedFile.count({ where: { shopId: shop, sha256 } });
    if (there > 0) return false;
    await queries.loadedFile.update({ where: { id }, data: { sha256, lines }, select: { id: true } });
    this.file = { ...this.file, sha256, lines };
    return true;
  }

  /** The same file again (with a cause filled in elsewhere, say) keeps its first row. */
  async id(): Promise<number> {
    if (this.#id !== null) return this.#id;
    const { sha256, name, lines } = this.file;
    const { queries, shop } = this;
    const key = { where: { shopId_sha256: { shopId: shop, sha256 } }, select: { id: true } };
    const there = await queries.loadedFile.findUnique(key);
    const counts = { lines, added: 0, alreadyThere: 0 };
    const row =
      there ??
      (await queries.loadedFile.create({
        data: { shopId: shop, sha256, name, ...counts, loadedAt: new Date() },
        select: { id: true },
      }));
    this.#isNew = there === null;
    this.#id = row.id;
    return row.id;
  }

  /** Keeps what the file brought, once all of it is stored. */
  async tell(actor: Actor, brought: Brought): Promise<void> {
    const id = await this.id();
    const { added, alreadyThere, causes, jobs } = brought;
    if (this.#isNew)
      await this.queries.loadedFile.update({
        where: { id },
        data: { added, alreadyThere },
        select: { id: true },
      });
    const { sha256, lines } = this.file;
    await writeTrace(this.queries, this.shop, actor, {
      action: 'loaded',
      kind: 'file',
      subject: subjectOf.file(id),
      after: { sha256, lines, added, alreadyThere, causes, jobs },
    });
  }
}
