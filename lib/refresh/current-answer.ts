import type { Answers, Question } from '@/lib/assess/answers';
import { fitAnswer, type ShopId } from '@/lib/store';

/** The newest answer to one of the shop's questions, as this program stored it; null before the first. */
export async function currentAnswer<Asked extends Question>(
  shop: ShopId,
  question: Asked,
): Promise<Answers[Asked] | null> {
  return (await fitAnswer(shop, question)) as unknown as Answers[Asked] | null;
}
