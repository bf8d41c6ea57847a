import { signedMillimetres } from '@/app/_words/numbers';
import { words } from '@/app/_words/words';
import type { DatumLine } from '@/lib/assess';
import type { Kind } from '@/lib/assess/evidence';

/** A datum that stays within this at both ends, mm, is called straight. */
const STRAIGHT = 0.5;

/** Where a hypothesis has the datum: straight, or how far off at each end. */
export function datumWords(datum: readonly DatumLine[], kind: Kind = 'height'): string {
  const t = words('evidence');
  const off = (['front', 'rear'] as const).flatMap((end) => {
    const errors = datum.map((line) => ({ side: line.side, error: line[end].error }));
    if (errors.every(({ error }) => Math.abs(error) < STRAIGHT)) return [];
    const sides = errors.map(({ side, error }) =>
      t(`words.datum.${kind === 'centerline' ? 'pin' : side}`, { error: signedMillimetres(error) }),
    );
    return [t(`words.datum.${end}`, { sides: sides.join(', ') })];
  });
  return off.length === 0
    ? t('words.datum.straight', { kind })
    : t('words.datum.off', { kind, ends: off.join('; ') });
}
