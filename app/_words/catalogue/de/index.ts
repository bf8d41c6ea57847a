import look from './look.json';

/** One file for each part of the house that has words. */
export default { look };
