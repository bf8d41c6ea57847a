/** Asks the registry whether a package that runs in the shop has a known hole. */
import { npm } from './install.mjs';

/** Holes that count; milder ones are looked at when packages are brought up to date. */
const COUNTED = /** @type {const} */ (['high', 'critical']);
const ARGS = [
  'audit',
  '--omit=dev',
  '--audit-level=high',
  '--json',
  '--fetch-retries=0',
  '--fetch-timeout=20000',
];

/**
 * @typedef {{ answered: false } | { answered: true, holes: string[] }} Audit holes as `name: severity`
 * @param {string} output of `npm audit --json`
 * @returns {Audit}
 */
export function readAudit(output) {
  const start = output.indexOf('{');
  const end = output.lastIndexOf('}');
  /** @type {any} */
  let told;
  try {
    told = JSON.parse(output.slice(start, end + 1));
  } catch {
    return { answered: false };
  }
  if (told?.metadata?.vulnerabilities === undefined) return { answered: false };
  const found = Object.entries(/** @type {Record<string, { severity: any }>} */ (told.vulnerabilities ?? {}));
  return {
    answered: true,
    holes: found
      .filter(([, { severity }]) => COUNTED.includes(severity))
      .map(([name, { severity }]) => `${name}: ${severity}`),
  };
}

/** @returns {Promise<import('./checks.mjs').Counts>} nothing is counted where the registry does not answer */
export async function audit() {
  const { output } = await npm(ARGS, 'pipe');
  const result = readAudit(output);
  if (!result.answered)
    return { passed: 0, failed: 0, said: 'not done: the registry does not answer audits' };
  for (const hole of result.holes) console.log(`  ${hole}`);
  return result.holes.length === 0 ? { passed: 1, failed: 0 } : { passed: 0, failed: 1 };
}
