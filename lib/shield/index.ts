/** What keeps a browser from doing with our answers what we did not mean. */
export { contentSecurityPolicy, NO_PAGE_POLICY, NONCE_HEADER } from './content-security-policy';
export { answerHeaders } from './answer-headers';
export { headPage, PATH_HEADER } from './page-head';
