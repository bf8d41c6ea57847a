/**
 * A spreadsheet runs a text field that begins with one of these as a formula, also in their wide forms and after a
 * tab or a line end. The writer puts an apostrophe in front, and the reader takes it off, so that what is written and
 * read again is the same text.
 */
const FORMULA = /^'*[=+\-@\t\r\n＝＋－＠]/;
const ESCAPED = /^'+[=+\-@\t\r\n＝＋－＠]/;

/** Text as it is written: with an apostrophe where a spreadsheet would see a formula. */
export function writeText(text: string): string {
  return FORMULA.test(text) ? `'${text}` : text;
}

/** Text as it was before `writeText`. */
export function readText(field: string): string {
  return ESCAPED.test(field) ? field.slice(1) : field;
}
