import { describe, expect, it } from 'vitest';
import { jsonWithout, textWithout } from '@/lib/store/person-data/without-person';

const ONE = { code: 'AB', name: 'Ada (the elder)', pseudonym: 'former-1' };

describe('a sentence without a person', () => {
  it('has the pseudonym where code or name stood as words of their own, and nowhere else', () => {
    expect(textWithout('AB hung it, Ada (the elder) read it: AB-AB.', ONE)).toBe(
      'former-1 hung it, former-1 read it: former-1-former-1.',
    );
    expect(textWithout('ABC, CAB, ÄAB, AB1 and ab', ONE)).toBe('ABC, CAB, ÄAB, AB1 and ab');
  });

  it('keeps a code of one sign, which is as likely a point; the name goes all the same', () => {
    const short = { ...ONE, code: 'K' };
    expect(textWithout('K was bent, said Ada (the elder)', short)).toBe('K was bent, said former-1');
  });

  it('is the same where there is neither', () => {
    expect(textWithout('nothing', { ...ONE, code: '', name: '' })).toBe('nothing');
  });
});

describe('a document without a person', () => {
  it('has the pseudonym as value, as name of a value and in sentences, and leaves names of other things', () => {
    const document = {
      technician: 'AB',
      hands: { AB: { n: 2, why: 'too few of AB' }, CD: null },
      jobs: [{ job: 'AB', gauge: 'AB', technicians: ['AB', 'CD'], sd: 0.4 }],
      points: [{ name: 'AB' }],
    };
    expect(jsonWithout(document, ONE)).toEqual({
      technician: 'former-1',
      hands: { 'former-1': { n: 2, why: 'too few of former-1' }, CD: null },
      jobs: [{ job: 'AB', gauge: 'AB', technicians: ['former-1', 'CD'], sd: 0.4 }],
      points: [{ name: 'AB' }],
    });
  });
});
