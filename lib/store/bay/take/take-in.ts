import type { Entry } from '@/lib/bay';
import { finishRound } from './finish';
import { takeHanging } from './hang';
import { takeCorrection, takeReading } from './read';
import { settle } from './settle';
import type { TakenIn, Taking } from './taking';

/** Does to the measurements what an entry says, or tells why it cannot be. */
export async function takeIn(taking: Taking, entry: Entry): Promise<TakenIn> {
  const { body } = entry;
  switch (body.kind) {
    case 'hang':
      return takeHanging(taking, body);
    case 'read':
      return { conflict: await takeReading(taking, { ...body, at: entry.at }) };
    case 'correct':
      return { conflict: await takeCorrection(taking, body) };
    case 'settle':
      return { conflict: await settle(taking, body) };
    case 'finish':
      await finishRound(taking);
      return { conflict: null };
    case 'equipment':
    case 'skip':
    case 'resume':
      return { conflict: null };
  }
}
