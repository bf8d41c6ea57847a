import { describe, expect, it } from 'vitest';
import { database } from '@/lib/store/connection/database';
import { createToken, holderOf, listTokens, revokeToken } from '@/lib/store/tokens';
import { freshStore } from '@/tests/unit/store/fresh-store';

const store = freshStore();
const actor = { person: null, via: 'page' } as const;
const NOW = Date.UTC(2026, 5, 1, 12);
const MINUTE = 60_000;
const wanted = { name: 'the office', scopes: ['reports:read'], expiresAt: null } as const;

describe('a token', () => {
  it('is 256 bits of chance behind a beginning of its own, and only its digest is kept', async () => {
    const token = await createToken(store.shop, wanted, actor, NOW);
    expect(token).toMatch(/^rehang_[A-Za-z0-9_-]{43}$/);
    const [row] = await database().apiToken.findMany();
    expect(row?.digest).toMatch(/^[0-9a-f]{64}$/);
    const rest = token.slice('rehang_'.length);
    expect(JSON.stringify([row, await database().trace.findMany()])).not.toContain(rest);
  });

  it('opens its own shop for what it is good for, until it is revoked', async () => {
    const token = await createToken(store.shop, wanted, actor, NOW);
    expect(await holderOf(token, NOW)).toMatchObject({ shop: { id: store.shop }, scopes: ['reports:read'] });
    const [{ id } = { id: 0 }] = await listTokens(store.shop);
    expect(await revokeToken(store.shop + 1, id, actor, NOW)).toBe(false);
    expect(await holderOf(token, NOW)).not.toBeNull();
    expect(await revokeToken(store.shop, id, actor, NOW)).toBe(true);
    expect(await holderOf(token, NOW)).toBeNull();
    expect(await revokeToken(store.shop, id, actor, NOW)).toBe(false);
  });

  it('runs out on time', async () => {
    const token = await createToken(store.shop, { ...wanted, expiresAt: NOW + MINUTE }, actor, NOW);
    expect(await holderOf(token, NOW + MINUTE - 1)).not.toBeNull();
    expect(await holderOf(token, NOW + MINUTE)).toBeNull();
  });

  it('that was never made opens nothing, whatever it looks like', async () => {
    const token = await createToken(store.shop, wanted, actor, NOW);
    for (const text of [
      '',
      'rehang_',
      `${token}A`,
      token.slice(0, -1),
      token.toUpperCase(),
      `rehang_${'A'.repeat(43)}`,
    ])
      expect(await holderOf(text, NOW)).toBeNull();
  });

  it('has its use written down no more than once a minute, also after the clock was set back', async () => {
    const token = await createToken(store.shop, wanted, actor, NOW);
    const lastUse = async () => (await listTokens(store.shop))[0]?.lastUsedAt;
    expect(await lastUse()).toBeNull();
    await holderOf(token, NOW);
    await holderOf(token, NOW + MINUTE - 1);
    expect(await lastUse()).toBe(NOW);
    await holderOf(token, NOW + MINUTE);
    expect(await lastUse()).toBe(NOW + MINUTE);
    await holderOf(token, NOW - 60 * MINUTE);
    expect(await lastUse()).toBe(NOW - 60 * MINUTE);
  });

  it('is refused in a sentence without a name, a use or a future, or under a name that is taken', async () => {
    const make = (change: object) => createToken(store.shop, { ...wanted, ...change }, actor, NOW);
    await expect(make({ name: ' ' })).rejects.toThrow(/Name the token by what it is for/);
    await expect(make({ scopes: [] })).rejects.toThrow(/at least one thing/);
    await expect(make({ expiresAt: NOW })).rejects.toThrow(/is past/);
    await make({});
    await expect(make({})).rejects.toThrow(/named the office already/);
    expect(await listTokens(store.shop)).toHaveLength(1);
  });

  it('leaves a trace when it is made and when it is revoked', async () => {
    await createToken(store.shop, wanted, actor, NOW);
    const [{ id } = { id: 0 }] = await listTokens(store.shop);
    await revokeToken(store.shop, id, actor, NOW);
    const traces = await database().trace.findMany({ orderBy: { id: 'asc' } });
    expect(traces.map(({ action, subject }) => [action, subject])).toEqual([
      ['made a token', `token ${id}`],
      ['revoked a token', `token ${id}`],
    ]);
  });
});
