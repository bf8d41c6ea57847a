/** A field read as a number, or the reason why it is none. */
export type NumberField = { number: number } | { problem: string };

const POINT = /^[+-]?(?:\d+(?:\.\d+)?|\.\d+)$/;
const COMMA = /^[+-]?(?:\d+,\d+|,\d+)$/;
/** `1.310` is 1310 to one writer and 1.31 to another. */
export const AMBIGUOUS_THOUSANDS = /^[+-]?[1-9]\d{0,2}[.,]\d{3}$/;

/** All digits of the smallest number there is; what is longer is not looked at further. */
const LONGEST = 400;

/** Reads digits with a decimal point, or with a decimal comma where that cannot be the separator. Never −0. */
export function readNumber(field: string, decimalComma: boolean): NumberField {
  if (field.length > LONGEST)
    return { problem: `has more than ${LONGEST} characters. Write the reading alone` };
  const text = field.startsWith('−') ? `-${field.slice(1)}` : field;
  if (POINT.test(text)) return { number: Number(text) + 0 };
  if (decimalComma && COMMA.test(text)) return { number: Number(text.replace(',', '.')) + 0 };
  return { problem: whyNoNumber(text, decimalComma) };
}

export const isDecimalComma = (field: string) => field.includes(',');

function whyNoNumber(text: string, decimalComma: boolean): string {
  if (/^[+-]?(?:\d+(?:\.\d*)?|\.\d+)e[+-]?\d+$/i.test(text)) {
    return 'is written with an exponent. Write all digits, such as 1310.5';
  }
  if (/^[+-]?(?:nan|inf(?:inity)?)$/i.test(text))
    return 'is no number. Enter the reading, or remove the line';
  if (text.startsWith('#')) return 'is an error of the spreadsheet. Enter the reading itself';
  if (/^[+-]?\d{1,3}(?:[.,' \u00a0\u202f]\d{3})+(?:[.,]\d+)?$/.test(text)) {
    return 'has a separator between thousands. Write it without, such as 1310.5';
  }
  if (!decimalComma && COMMA.test(text)) {
    return 'has a decimal comma, but commas separate the fields. Use a decimal point, or semicolons between fields';
  }
  const unit = /^[+-]?[\d.,]+\s*(mm|cm|m|in|inch|inches|ft|"|''|″)\.?$/i.exec(text)?.[1];
  if (unit !== undefined) {
    return unit.toLowerCase() === 'mm'
      ? 'names its unit. Write the number alone; all lengths are millimetres'
      : `is in another unit (${unit}). Convert it to millimetres and write the number alone`;
  }
  const odd = /[^\d.,+-]/u.exec(text)?.[0];
  return odd === undefined
    ? 'is not a number. Write digits with one decimal point, such as 1310.5'
    : `is not a number: it holds "${odd}". Write digits with one decimal point, such as 1310.5`;
}
