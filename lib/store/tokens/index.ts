/** Tokens that let programs in by the HTTP interface. */
export { createToken, listTokens, revokeToken, type ApiToken, type NewToken } from './tokens';
export { holderOf, type TokenHolder } from './holder-of';
export { TOKEN_SCOPES, type TokenScope } from './scopes';
