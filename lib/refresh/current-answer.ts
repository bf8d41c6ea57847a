import {
  monthQuestion,
  type Answers,
  type MonthDocuments,
  type MonthKind,
  type Question,
} from '@/lib/assess/answers';
import { fitAnswer, fitAnswers, type ShopId } from '@/lib/store';

/** The newest answer to one of the shop's questions, as this program stored it; null before the first. */
export async function currentAnswer<Asked extends Question>(
  shop: ShopId,
  question: Asked,
): Promise<Answers[Asked] | null> {
  return (await fitAnswer(shop, question)) as unknown as Answers[Asked] | null;
}

/** The sums of some months, of one sheet or of all, as this program stored them with its newest answers. */
export async function currentMonths<Kind extends MonthKind>(
  shop: ShopId,
  kind: Kind,
  months: readonly string[],
  sheet?: string,
): Promise<{ month: string; sums: MonthDocuments[Kind] }[]> {
  const asked = months.map((month) => ({ month, question: monthQuestion(kind, month, sheet) }));
  const found = await fitAnswers(
    shop,
    'choices',
    asked.map(({ question }) => question),
  );
  return asked.flatMap(({ month, question }) => {
    const sums = found.get(question);
    return sums === undefined ? [] : [{ month, sums: sums as unknown as MonthDocuments[Kind] }];
  });
}
