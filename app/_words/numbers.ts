const NO_BREAK = '\u00a0';
const MINUS = '\u2212';

function fixed(value: number, digits: number): string {
  const text = Math.abs(value).toFixed(digits);
  return value < 0 && Number(text) !== 0 ? MINUS + text : text;
}

/** A length with its unit: `307.5 mm`. */
export function millimetres(value: number, digits = 1): string {
  return `${fixed(value, digits)}${NO_BREAK}mm`;
}

/** A number that stands in a column whose head names millimetres: `307.5`. */
export function bareMillimetres(value: number, digits = 1): string {
  return fixed(value, digits);
}

/** A deviation, always with its sign: `+6.2`, `−0.4`, `0.0`. */
export function signed(value: number, digits = 1): string {
  const text = fixed(value, digits);
  return value > 0 && Number(text) !== 0 ? `+${text}` : text;
}

/** A deviation with its unit: `+6.2 mm`. */
export function signedMillimetres(value: number, digits = 1): string {
  return `${signed(value, digits)}${NO_BREAK}mm`;
}

/** A share of one as a percentage: `78 %`. Certainty is not claimed by rounding. */
export function percent(share: number): string {
  const rounded = Math.round(share * 100);
  if (rounded === 100 && share < 1) return `>${NO_BREAK}99${NO_BREAK}%`;
  if (rounded === 0 && share > 0) return `<${NO_BREAK}1${NO_BREAK}%`;
  return `${rounded}${NO_BREAK}%`;
}

/** A probability as a percentage; it is never told as certain: `> 99 %`, `< 1 %`. */
export function probability(p: number): string {
  return percent(Math.min(1 - 1e-9, Math.max(1e-9, p)));
}

/** A count with its noun: `1 job`, `1,204 jobs`. */
export function count(number: number, one: string, many = `${one}s`): string {
  return `${grouped(number)}${NO_BREAK}${number === 1 ? one : many}`;
}

/** A whole number, thousands set apart: `10,000`. */
export function grouped(number: number): string {
  return number.toLocaleString('en-GB');
}
