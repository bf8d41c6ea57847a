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
} as const;

export type Ink = keyof typeof INKS;

export const WORD_INK = { token: 'ink-soft', light: '#50595c' } as const;
export const PAPER = { token: 'surface', light: '#ffffff' } as const;
