/**
 * An address whose percent signs all stand for a character: those of a part that does not decode are taken for what
 * they are. The framework fails on such an address before any page is asked; so it names something that is not there.
 *
 * @param {string} address path and query
 */
export function wellFormed(address) {
  const [path = '', ...query] = address.split('?');
  const mended = path.split('/').map((part) => (decodes(part) ? part : part.replaceAll('%', '%25')));
  return [mended.join('/'), ...query].join('?');
}

/** @param {string} part */
function decodes(part) {
  try {
    decodeURIComponent(part);
    return true;
  } catch {
    return false;
  }
}
