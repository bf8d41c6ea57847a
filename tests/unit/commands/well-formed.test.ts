import { expect, it } from 'vitest';
import { wellFormed } from '@/lib/commands/well-formed.mjs';

it('an address with a percent sign that stands for no character decodes afterwards, to what was written', () => {
  for (const part of ['%E0%A4%A', '%', '100%', '%zz', '%C3']) {
    const mended = wellFormed(`/sheets/${part}/copy`);
    expect(decodeURIComponent(mended)).toBe(`/sheets/${part}/copy`);
  }
});

it('an address that is well formed stays as it is, and so does what is asked of a page', () => {
  for (const address of ['/', '/jobs/K%204105?search=%E0%A4%A', '/sheets/M%C3%B6we', '/bay?a=?b=100%'])
    expect(wellFormed(address)).toBe(address);
});
