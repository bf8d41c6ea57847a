import type { Person } from '@/lib/store';
import { dayStart } from './calendar';
import { ORDINARY_HAND, type Hand, type TechnicianModel } from './hand';
import { FIRST_DAY, NEWCOMER_DAY, FROM_ABOVE_DAY, TIME_ZONE, TRAINING_DAY } from './stories';

/** Invented people; the stories that their readings tell are in stories.md. */
export const PEOPLE: readonly Person[] = [
  { code: 'FEL', name: 'Runa Feldspar', role: 'technician', active: true },
  { code: 'QUI', name: 'Tibor Quillow', role: 'technician', active: true },
  { code: 'MAR', name: 'Ines Marrowby', role: 'technician', active: true },
  { code: 'ASH', name: 'Jarle Ashwhistle', role: 'technician', active: true },
  { code: 'WIN', name: 'Petra Windlass', role: 'technician', active: true },
  { code: 'THI', name: 'Oskar Thimblewood', role: 'technician', active: true },
  { code: 'LAR', name: 'Noor Larkspindle', role: 'technician', active: true },
  { code: 'BEC', name: 'Edda Beckonridge', role: 'technician', active: true },
  { code: 'HOL', name: 'Silvan Hollowmere', role: 'trainer', active: true },
  { code: 'GRE', name: 'Greta Greyfeather', role: 'manager', active: true },
];

const hand = (change: Partial<Hand>): Hand => ({ ...ORDINARY_HAND, ...change });

/** From the first day on, unless another day is given. */
const technician = (
  code: string,
  load: number,
  change: Partial<Hand>,
  from = FIRST_DAY,
): TechnicianModel => ({
  code,
  load,
  hands: [{ from: dayStart(from, TIME_ZONE), hand: hand(change) }],
});

/** Before the training, and what the training left as it was. */
const QUILLOW: Partial<Hand> = { repeatability: 0.55, setting: 1.3, missetRate: 0.14, bias: 0.1 };

/** Before she read the scale from above its mark. */
const LARKSPINDLE: Partial<Hand> = { repeatability: 0.48, setting: 0.6, bias: -0.15, missetRate: 0.03 };

export const TECHNICIANS: readonly TechnicianModel[] = [
  technician('FEL', 16, { repeatability: 0.36, setting: 0.45, missetRate: 0.02, bias: 0.05 }),
  {
    code: 'QUI',
    load: 18,
    hands: [
      { from: dayStart(FIRST_DAY, TIME_ZONE), hand: hand(QUILLOW) },
      {
        from: dayStart(TRAINING_DAY, TIME_ZONE),
        hand: hand({ ...QUILLOW, setting: 0.65, missetRate: 0.04 }),
      },
    ],
  },
  technician('MAR', 15, { setting: 0.6, bias: -0.25, forgetsClearance: 0.05, missetRate: 0.03 }),
  technician('ASH', 15, { repeatability: 0.45, setting: 0.7, bias: 0.15, readsHalves: 0.85 }),
  technician('WIN', 14, { repeatability: 0.42, setting: 0.55, leftLow: 1.9, missetRate: 0.04 }),
  technician('THI', 13, { repeatability: 0.8, setting: 0.75, bias: 0.3, heightsFirst: true }),
  {
    code: 'LAR',
    load: 14,
    hands: [
      { from: dayStart(FIRST_DAY, TIME_ZONE), hand: hand(LARKSPINDLE) },
      { from: dayStart(FROM_ABOVE_DAY, TIME_ZONE), hand: hand({ ...LARKSPINDLE, bias: -1.4 }) },
    ],
  },
  technician('BEC', 8, { repeatability: 0.6, setting: 0.85, missetRate: 0.08 }, NEWCOMER_DAY),
];
