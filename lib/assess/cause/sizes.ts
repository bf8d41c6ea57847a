/**
 * The size of a mis-set or of damage whose size is not known in advance, as bands: a mixture of normal
 * distributions that together cover 3 to 30 mm evenly, one set for each sign. The weights are learned; the
 * bands are fixed, so that every hypothesis stays Gaussian and its marginal likelihood exact.
 */
export const SIZE_BANDS: readonly { centre: number; sd: number }[] = [
  { centre: 4.1, sd: 0.8 },
  { centre: 6.3, sd: 1.2 },
  { centre: 9.3, sd: 1.6 },
  { centre: 13, sd: 1.9 },
  { centre: 17, sd: 2.1 },
  { centre: 22.5, sd: 3 },
];

/** How much the two sides of a station that is damaged on both differ, as an sd relative to the size. */
export const SIDE_DIFFERENCE = 0.17;

/** All bands of one sign as one, where damage meets a mis-set whose share of the reading is open. */
export const WIDE_BAND = { centre: 10.5, sd: 5 } as const;

/** One broad normal distribution that stands for all bands where two rare events meet. */
export const BROAD_SD = 12;

/** Change of a length whose end is damaged: bands as above. */
export const LENGTH_BANDS: readonly { centre: number; sd: number; weight: number }[] = [
  { centre: 3, sd: 0.8, weight: 0.2 },
  { centre: 5, sd: 1, weight: 0.25 },
  { centre: 7.5, sd: 1.2, weight: 0.25 },
  { centre: 10.5, sd: 1.4, weight: 0.25 },
  { centre: 15, sd: 3, weight: 0.05 },
];
