/**
 * Browser tests run in lanes, side by side: each with a server and a database of its own, so that what one test
 * file changes is not seen by a file beside it.
 */

/** One for each of the two cores that every machine of ours has: more would only wait for each other. */
export const LANES = 2;

/** The number that Playwright gives to what runs side by side; the first where it says none. */
export const ownLane = () => Number(process.env.TEST_PARALLEL_INDEX ?? '0');

/**
 * @param {number} first port of the first lane
 * @param {number} lane from 0
 */
export const portOf = (first, lane) => first + lane;

/**
 * @param {string} first path of the first lane's database
 * @param {number} lane from 0
 */
export const databaseOf = (first, lane) => (lane === 0 ? first : `${first}-${lane}`);
