/** In which the path that a browser asked for reaches the pages. */
export const PATH_HEADER = 'x-rehang-path';
