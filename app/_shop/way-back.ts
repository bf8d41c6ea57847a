/** A path of this program to lead back to; anything else, another host's address above all, is the overview. */
export function wayBack(text: string | undefined): string {
  if (text === undefined || !/^\/(?![/\\])/.test(text) || text.length > 500) return '/';
  return text.startsWith('/sign-in') || text.startsWith('/sign-out') ? '/' : text;
}
