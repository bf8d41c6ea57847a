/** Joins the class names that apply: `classNames('row', wide && 'wide')` gives `'row wide'` or `'row'`. */
export function classNames(...names: (string | false | null | undefined)[]): string {
  return names.filter(Boolean).join(' ');
}
