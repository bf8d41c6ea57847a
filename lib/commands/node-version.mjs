/** The least Node that everything here runs on. */
const LEAST = [20, 19];

/** @returns {string | null} a sentence where the present Node is too old */
export function nodeTooOld(version = process.versions.node) {
  const [major = 0, minor = 0] = version.split('.').map(Number);
  if (major > LEAST[0] || (major === LEAST[0] && minor >= LEAST[1])) return null;
  return `Rehang needs Node ${LEAST.join('.')} or newer; this is Node ${version}. Install a newer one from https://nodejs.org and run the command again.`;
}
