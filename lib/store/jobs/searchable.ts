const WIDE: Record<string, string> = { '%': '％', _: '＿', '\\': '＼' };

/**
 * Text in the form that it is searched in: lower case, and without the signs that a database takes for
 * 'anything', which their wide forms stand for.
 */
export function searchable(text: string): string {
  return text.toLowerCase().replace(/[%_\\]/g, (sign) => WIDE[sign] ?? sign);
}
