import type { Query } from '@/app/_words/address';
import { handAnswer, handWithin, spanChoices, type Viewer } from '@/lib/access';
import type { HandAnswer, HandSpan, SpanChoices } from '@/lib/assess/answers';
import { handQuestion, heldTo, isAsked, type HandQuestion } from './hand-question';

export interface AskedHand {
  question: HandQuestion;
  notes: string[];
  choices: SpanChoices;
  /** Over the whole history; null before the first answer, and for a colleague's. */
  hand: HandAnswer | null;
  /** Of what was asked for; null where nothing was, or nothing lies in it. */
  span: HandSpan | null;
}

/** The figures of a hand, and those of the part of its work that an address asks for. */
export async function askedHand(viewer: Viewer, code: string, query: Query): Promise<AskedHand> {
  const { question, notes } = handQuestion(query);
  const [choices, hand] = await Promise.all([spanChoices(viewer), handAnswer(viewer, code)]);
  const span =
    hand === null || !isAsked(question) ? null : await handWithin(viewer, code, heldTo(question, choices));
  return { question, notes, choices, hand, span };
}
