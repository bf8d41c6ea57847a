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
const { install } = await import('./install.mjs');
const { stopChildrenWithUs } = await import('./run.mjs');

stopChildrenWithUs();
const quick = process.argv.includes('--quick');
let passed = 0;
let failed = 0;
try {
  await install();
  for (const check of checks(quick)) {
    console.log(`\n— ${check.name}`);
    const result = await check.run();
    if (result.failed > 0) console.log(`— ${check.name}: ${result.failed} failed`);
    passed += result.passed;
    failed += result.failed;
  }
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  failed += 1;
}
console.log(`\n${passed} passed, ${failed} failed`);
process.exitCode = failed === 0 ? 0 : 1;
