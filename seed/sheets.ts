import { drawSheet, type SheetDraft } from './draw-sheet';
import type { VehicleSheet } from './sheet';

/** The four center-section lengths that carry the datum, for zero stations a and b: two rails, two diagonals. */
const center = (a: number, b: number) => [`${a}L-${b}L`, `${a}R-${b}R`, `${a}L-${b}R`, `${a}R-${b}L`];

/** Invented vehicles: no sheet describes any real one. */
const DRAFTS: readonly SheetDraft[] = [
  {
    name: 'Small hatch',
    tolerance: 3,
    letters: 'own',
    stations: [
      { x: 0, section: 'front', left: 214, half: 438, where: 'Front rail, tip' },
      { x: 1052, section: 'center', left: 268, half: 412, where: 'Torque box, front', zero: true },
      { x: 2471, section: 'center', left: 231, half: 466, where: 'Torque box, rear', zero: true },
      { x: 3392, section: 'rear', left: 317, half: 521, where: 'Rear rail, end' },
    ],
    lengths: [...center(1, 2), '0L-1L', '0R-1R', '0L-1R', '2L-3L', '2R-3R', '2R-3L'],
  },
  {
    name: 'Small saloon',
    tolerance: 3,
    letters: 'shared',
    stations: [
      { x: 0, section: 'front', left: 237, right: 231, half: 455, where: 'Cradle mount' },
      { x: 1094, section: 'center', left: 246, half: 398, where: 'Floor rail, front', zero: true },
      { x: 2583, section: 'center', left: 223, half: 471, where: 'Floor rail, rear', zero: true },
      { x: 3655, section: 'rear', left: 341, half: 508, where: 'Rear rail, end' },
    ],
    lengths: [...center(1, 2), '0L-1L', '0R-1R', '0R-1L', '2L-3L', '2L-3R', '2R-3R'],
  },
  {
    name: 'Estate',
    tolerance: 3,
    letters: 'own',
    centerline: true,
    stations: [
      { x: 0, section: 'front', left: 226, half: 447, where: 'Front rail, tip' },
      { x: 1121, section: 'center', left: 257, half: 405, where: 'Torque box, front', zero: true },
      { x: 2659, section: 'center', left: 209, half: 483, where: 'Torque box, rear', zero: true },
      { x: 3284, section: 'rear', left: 352, right: 344, half: 462, where: 'Rear suspension mount' },
      { x: 4026, section: 'rear', left: 386, half: 527, where: 'Rear rail, end' },
    ],
    lengths: [...center(1, 2), '0L-1L', '0R-1R', '0L-1R', '2L-3L', '2R-3R', '2L-4R', '2R-4L'],
  },
  {
    name: 'Coupe',
    tolerance: 3,
    letters: 'shared',
    stations: [
      { x: 0, section: 'front', left: 243, half: 429, where: 'Front rail, tip' },
      { x: 468, section: 'front', left: 668, half: 541, where: 'Strut tower', strut: true },
      { x: 1078, section: 'center', left: 234, half: 417, where: 'Floor rail, front', zero: true },
      { x: 2496, section: 'center', left: 219, half: 449, where: 'Floor rail, rear', zero: true },
      { x: 3517, section: 'rear', left: 328, half: 496, where: 'Rear rail, end' },
    ],
    lengths: [...center(2, 3), '0L-2L', '0R-2R', '1L-2R', '1R-2L', '3L-4L', '3R-4R'],
    tracking: [['0L-2R', '0L-3R']],
  },
  {
    name: 'Compact crossover',
    tolerance: 3,
    letters: 'own',
    centerline: true,
    stations: [
      { x: 0, section: 'front', left: 284, half: 461, where: 'Front rail, tip' },
      { x: 512, section: 'front', left: 731, half: 556, where: 'Strut tower', strut: true },
      { x: 746, section: 'front', left: 262, right: 271, half: 436, where: 'Cradle mount, rear' },
      { x: 1163, section: 'center', left: 291, half: 424, where: 'Torque box, front', zero: true },
      { x: 2637, section: 'center', left: 258, half: 478, where: 'Torque box, rear', zero: true },
      { x: 3702, section: 'rear', left: 394, half: 533, where: 'Rear rail, end' },
    ],
    lengths: [...center(3, 4), '0L-3L', '0R-3R', '2L-3R', '2R-3L', '1L-3R', '4L-5L', '4R-5R'],
    tracking: [['0R-3L', '0R-4L']],
  },
  {
    name: 'Panel van',
    tolerance: 3,
    letters: 'shared',
    stations: [
      { x: 0, section: 'front', left: 312, half: 487, where: 'Front rail, tip' },
      { x: 643, section: 'front', left: 298, half: 452, where: 'Cradle mount' },
      { x: 1187, section: 'center', left: 327, half: 431, where: 'Frame rail, front', zero: true },
      { x: 2914, section: 'center', left: 306, half: 457, where: 'Frame rail, rear', zero: true },
      { x: 3468, section: 'rear', left: 418, right: 412, half: 449, where: 'Spring mount' },
      { x: 4387, section: 'rear', left: 437, half: 502, where: 'Rear rail, end' },
    ],
    lengths: [...center(2, 3), '0L-2L', '0R-2R', '1L-2R', '1R-2L', '3L-4L', '3R-5R', '4L-5L'],
    withoutSides: ['4L-5L'],
  },
  {
    name: 'Pick-up, double cab',
    tolerance: 4,
    letters: 'own',
    stations: [
      { x: 0, section: 'front', left: 358, half: 402, where: 'Frame horn' },
      { x: 587, section: 'front', left: 381, half: 417, where: 'Front cross-member' },
      { x: 1249, section: 'center', left: 402, half: 439, where: 'Cab mount, front', zero: true },
      { x: 2876, section: 'center', left: 371, half: 473, where: 'Cab mount, rear', zero: true },
      { x: 3391, section: 'rear', left: 488, half: 481, where: 'Spring hanger, front' },
      { x: 4078, section: 'rear', left: 519, half: 492, where: 'Kick-up' },
      { x: 4823, section: 'rear', left: 446, half: 468, where: 'Frame, end' },
    ],
    lengths: [...center(2, 3), '0L-2L', '0R-2R', '0L-2R', '1R-2L', '3L-5L', '3R-5R', '3L-6R', '3R-6L'],
    tracking: [['1L-2R', '1L-3R']],
  },
  {
    name: 'Large saloon',
    tolerance: 3,
    letters: 'own',
    centerline: true,
    stations: [
      { x: 0, section: 'front', left: 229, half: 472, where: 'Front rail, tip' },
      { x: 541, section: 'front', left: 694, half: 567, where: 'Strut tower', strut: true },
      { x: 1206, section: 'center', left: 241, half: 433, where: 'Torque box, front', zero: true },
      { x: 2794, section: 'center', left: 224, half: 489, where: 'Torque box, rear', zero: true },
      { x: 3893, section: 'rear', left: 346, right: 354, half: 539, where: 'Rear rail, end' },
    ],
    lengths: [...center(2, 3), '0L-2L', '0R-2R', '0R-2L', '1L-2L', '1R-2R', '3L-4L', '3R-4R', '3L-4R'],
  },
];

export const SHEETS: readonly VehicleSheet[] = DRAFTS.map(drawSheet);
