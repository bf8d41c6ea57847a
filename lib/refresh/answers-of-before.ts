import { createHash } from 'node:crypto';
import type { Answers, KnownAnswers, SeldomChanged } from '@/lib/assess/answers';
import { fitAnswers, type Json, type ShopId } from '@/lib/store';
import { asJson } from './stored-fit';

/** Under which question it is kept what the seldom changed answers were made from. */
const MADE_FROM = 'made-from';
/** What is kept of the shares that the answers were added up from. */
const SHARES = 'shares';
const QUESTIONS: readonly SeldomChanged[] = ['rates', 'risk', 'what-if'];

/**
 * Answers as they were stored, for as long as what they are made from is the same: the fit with all it learned, and
 * what each answer names.
 */
export class AnswersOfBefore {
  readonly #fit: string;
  readonly #answers: ReadonlyMap<string, Json>;
  readonly #before: Readonly<Record<string, unknown>>;
  readonly #now: Record<string, string> = {};

  private constructor(fit: string, answers: ReadonlyMap<string, Json>) {
    this.#fit = fit;
    this.#answers = answers;
    const before = answers.get(MADE_FROM);
    this.#before =
      typeof before === 'object' && before !== null && !Array.isArray(before) ? { ...before } : {};
  }

  /** @param fit all that the answers rest on beside what each of them names: the stamp of the program, what was learned. */
  static async of(shop: ShopId, fit: unknown): Promise<AnswersOfBefore> {
    const answers = await fitAnswers(shop, 'choices', [MADE_FROM, ...QUESTIONS]);
    return new AnswersOfBefore(digest(fit), answers);
  }

  readonly known: KnownAnswers = (question, madeFrom, work) => {
    const stamp = digest([this.#fit, madeFrom]);
    this.#now[question] = stamp;
    const answer = this.#answers.get(question);
    // The document is the answer that this program stored.
    return this.#before[question] === stamp && answer !== undefined
      ? (answer as unknown as Answers[typeof question])
      : work();
  };

  /** Whether the answers were added up from these shares. */
  restOn(shares: unknown): boolean {
    return this.#before[SHARES] === digest(shares);
  }

  /** What is kept beside the answers. */
  madeFrom(shares: unknown): Record<string, Json> {
    return { [MADE_FROM]: asJson({ ...this.#now, [SHARES]: digest(shares) }) };
  }
}

const digest = (of: unknown): string => createHash('sha256').update(JSON.stringify(of)).digest('base64');
