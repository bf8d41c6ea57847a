/**
 * What a stroke means. On a page its colour is that of the theme (drawing.module.css); in a file, which knows no theme,
 * the light colour of the same token, held to tokens.css by a test.
 */
export const INKS = {
  grid: { token: 'grid', light: '#e4e1d9', width: 1 },
  axis: { token: 'line-strong', light: '#7b7f7b', width: 1 },
  target: { token: 'band-line', light: '#7d8f96', width: 2, dash: '6 5' },
  limit: { token: 'ink-soft', light: '#50595c', width: 1.5, dash: '3 3' },
  farLimit: { token: 'ink-soft', light: '#50595c', width: 2 },
  line: { token: 'accent', light: '#0a5c80', width: 2.5 },
  second: { token: 'both', light: '#77317a', width: 2, dash: '8 3' },
  dot: { token: 'accent', light: '#0a5c80', width: 2.5, hollow: true },
  mark: { token: 'body', light: '#9c3a06', width: 3, hollow: true },
  // Of the picture of a vehicle: what is context, what was read, and the two parts of it.
  structure: { token: 'grid', light: '#e4e1d9', width: 1, filled: true },
  outline: { token: 'line', light: '#d6d3ca', width: 1.5 },
  zone: { token: 'body-ground', light: '#fbe9de', width: 1, filled: true },
  tolerance: { token: 'band', light: '#dfe6e8', width: 1, filled: true },
  datum: { token: 'line-strong', light: '#7b7f7b', width: 1.5 },
  tilt: { token: 'gauge', light: '#0a5c80', width: 2, dash: '8 5' },
  bodyPart: { token: 'body', light: '#9c3a06', width: 1, filled: true },
  gaugePart: { token: 'gauge', light: '#0a5c80', width: 1.5, hollow: true },
  gaugeHatch: { token: 'gauge', light: '#0a5c80', width: 1.2 },
  reading: { token: 'ink', light: '#1b2226', width: 2.5 },
  unjudged: { token: 'ink-soft', light: '#50595c', width: 1.5, hollow: true },
  earlier: { token: 'undecided', light: '#6b5200', width: 2, dash: '4 3' },
  earlierMark: { token: 'undecided', light: '#6b5200', width: 2 },
  break: { token: 'surface', light: '#ffffff', width: 3 },
  length: { token: 'line-strong', light: '#7b7f7b', width: 1 },
  lengthOut: { token: 'body', light: '#9c3a06', width: 3 },
  earlierOut: { token: 'undecided', light: '#6b5200', width: 2.5, dash: '7 4' },
  pin: { token: 'both', light: '#77317a', width: 2.5 },
  place: { token: 'ink', light: '#1b2226', width: 1.5, hollow: true },
  placeGauge: { token: 'gauge', light: '#0a5c80', width: 2.5, hollow: true },
  placeBody: { token: 'body', light: '#9c3a06', width: 2.5, hollow: true },
  placeBoth: { token: 'both', light: '#77317a', width: 2.5, hollow: true },
  placeOpen: { token: 'undecided', light: '#6b5200', width: 2, dash: '3 2', hollow: true },
} as const;

export type Ink = keyof typeof INKS;

/** Of strong words. */
export const STRONG_INK = { token: 'ink', light: '#1b2226' } as const;
export const WORD_INK = { token: 'ink-soft', light: '#50595c' } as const;
export const PAPER = { token: 'surface', light: '#ffffff' } as const;
