/**
 * `npm test`: every check there is, ending with the line `N passed, N failed`. Format, types and lint (which
 * holds the layering) count one each, tests count one by one. `-- --quick` leaves the browser out.
 */
import { nodeTooOld } from './node-version.mjs';

const tooOld = nodeTooOld();
if (tooOld !== null) {
  console.error(tooOld);
  process.exit(1);
}

const { checks } = await import('./checks.mjs');
const { installInSteps } = await import('./install.mjs');
const { stopChildrenWithUs } = await import('./run.mjs');

stopChildrenWithUs();
const quick = process.argv.includes('--quick');
let passed = 0;
let failed = 0;

/** @param {import('./checks.mjs').Check} check */
async function carryOut(check) {
  const result = await check.run().catch((error) => {
    console.error(error instanceof Error ? error.message : error);
    return /** @type {import('./checks.mjs').Counts} */ ({ passed: 0, failed: 1 });
  });
  const { passed: good, failed: bad, said = 'ready' } = result;
  console.log(`— ${check.name}: ${bad > 0 ? `${bad} failed` : good > 0 ? `${good} passed` : said}\n`);
  passed += good;
  failed += bad;
}

try {
  const finishPackages = await installInSteps();
  for (const lanes of checks(quick, finishPackages)) {
    const one = async (/** @type {import('./checks.mjs').Check[]} */ lane) => {
      for (const check of lane) await carryOut(check);
    };
    await Promise.all(lanes.map(one));
  }
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  failed += 1;
}
console.log(`\n${passed} passed, ${failed} failed`);
process.exitCode = failed === 0 ? 0 : 1;
