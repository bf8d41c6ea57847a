import { millimetres } from '@/app/_words/numbers';
import { told } from '@/app/_words/told';
import { words } from '@/app/_words/words';
import type { Fault, Hypothesis, Kind } from '@/lib/assess/evidence';

/** The name of a hypothesis: everything that it takes to be wrong. */
export function hypothesisWords({ faults }: Pick<Hypothesis, 'faults'>, kind: Kind = 'height'): string {
  if (faults.length === 0) return words('evidence')('words.ordinary');
  return faults.map((fault, index) => faultWords(fault, kind, index === 0)).join('; ');
}

/** `Gauge G7 at K set 10.2 mm low on the left (fits: tape read 10 mm off)`. */
function faultWords(fault: Fault, kind: Kind, begins: boolean): string {
  const t = words('evidence');
  const where = `${fault.zero ? 'zero' : 'other'}${begins ? 'First' : 'Next'}` as const;
  if (fault.what === 'body')
    return t('words.body', { where, place: placeOf(fault), amount: amountOf(fault, kind) });
  return t('words.gauge', {
    where,
    gauge: fault.gauge ?? '',
    place: placeOf(fault),
    again: fault.repeated ? 'yes' : 'no',
    setup: fault.setup ?? '',
    kind,
    amount: amountOf(fault, kind),
    fits: fault.slip === null ? 'no' : 'yes',
    slip: fault.slip === null ? '' : told(fault.slip),
  });
}

/** `A and B` or `K`: the letters of the sides concerned. */
function placeOf({ points: [left, right], sides }: Pick<Fault, 'points' | 'sides'>): string {
  if (sides === 'left') return left ?? right ?? '?';
  if (sides === 'right') return right ?? left ?? '?';
  return left !== null && right !== null && left !== right
    ? words('evidence')('words.both', { left, right })
    : (left ?? right ?? '?');
}

function amountOf({ sides, left, right }: Fault, kind: Kind): string {
  const t = words('evidence');
  const sizes = {
    left: millimetres(Math.abs(left)),
    right: millimetres(Math.abs(right)),
    leftWay: wayOf(left),
    rightWay: wayOf(right),
  };
  if (kind === 'centerline') return t('words.amounts.pin', sizes);
  if (sides !== 'both') return t(`words.amounts.${sides}`, sizes);
  if (sizes.leftWay !== sizes.rightWay) return t('words.amounts.opposite', sizes);
  return t(sizes.left === sizes.right ? 'words.amounts.same' : 'words.amounts.alike', sizes);
}

const wayOf = (size: number): 'low' | 'high' => (size < 0 ? 'low' : 'high');
