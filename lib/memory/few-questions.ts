import { LastUsed } from './last-used';

/** So many questions are remembered: there is no end to what an address may ask. */
const MOST = 20;

/** What comes of a question, remembered for those that were asked last. */
export function fewQuestions<Question, Result>(
  answer: (question: Question) => Result,
): (question: Question) => Result {
  const known = new LastUsed<{ result: Result }>(MOST, () => 1);
  return (question) => {
    const name = JSON.stringify(question);
    const there = known.get(name) ?? { result: answer(question) };
    known.set(name, there);
    return there.result;
  };
}
