/** What stays as it is on a page, as markup. */
export { FollowLinks } from './follow-links';
export { still } from './still';
