/** What stays as it is on a page, as markup. */
export { drawnOnce } from './drawn-once';
export { FollowLinks } from './follow-links';
export { still, stillAlone } from './still';
