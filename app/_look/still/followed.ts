/** Marks links that are written as markup, and followed by `FollowLinks`. */
export const FOLLOWED = 'data-followed';
