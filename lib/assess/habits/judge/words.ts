/** Numbers as a sentence shows them. */
export const percent = (share: number): string => {
  const value = 100 * share;
  const shown = value.toFixed(value !== 0 && value < 10 ? 1 : 0);
  return `${shown} %`;
};

export const mm = (value: number): string => `${value.toFixed(2)} mm`;

export const range = (low: number, high: number, show: (value: number) => string): string =>
  `95 % interval ${show(low)} to ${show(high)}`;
