/** Which route of the program an address belongs to, for counting: addresses name people and vehicles. */

/**
 * @param {{ dynamicRoutes: { page: string, regex: string }[], staticRoutes: { page: string }[] }} manifest
 *   `routes-manifest.json` of a build
 * @returns {(address: string) => string} the route as the program names it; `other` for what is none
 */
export function routeFinder({ dynamicRoutes, staticRoutes }) {
  const fixed = new Set(staticRoutes.map(({ page }) => page));
  const patterns = dynamicRoutes.map(({ page, regex }) => ({ page, pattern: new RegExp(regex) }));
  return (address) => {
    const path = address.split('?', 1)[0] ?? '/';
    if (path.startsWith('/_next/')) return '/_next';
    if (fixed.has(path)) return path;
    if (path.length > 500) return 'other';
    return patterns.find(({ pattern }) => pattern.test(path))?.page ?? 'other';
  };
}

/**
 * @param {Record<string, string>} routes `app-path-routes-manifest.json` of a build: files of the program, each with its route
 * @returns {Set<string>} the routes that are pages
 */
export const pagesAmong = (routes) =>
  new Set(
    Object.entries(routes)
      .filter(([file]) => file.endsWith('/page'))
      .map(([, route]) => route),
  );
