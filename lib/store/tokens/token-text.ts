import { createHash, randomBytes } from 'node:crypto';

/** By this beginning a token is found where it should not be, in a file that is shared, say. */
const BEGINNING = 'rehang_';
const RANDOM_BYTES = 32;
/** 32 bytes in base64url. */
const WHOLE = /^rehang_[A-Za-z0-9_-]{43}$/;

/** A fresh token: 256 bits of chance behind a beginning of our own. */
export const newToken = (): string => `${BEGINNING}${randomBytes(RANDOM_BYTES).toString('base64url')}`;

/** Whether this can be a token at all; what cannot is not looked up. */
export const looksLikeToken = (text: string): boolean => WHOLE.test(text);

/** What is kept of a token: with so much chance in it, one SHA-256 cannot be undone by trying. */
export const digestOf = (token: string): string => createHash('sha256').update(token).digest('hex');
