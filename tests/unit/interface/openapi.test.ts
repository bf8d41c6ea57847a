import { readdirSync } from 'node:fs';
import { dirname } from 'node:path';
import { describe, expect, it } from 'vitest';
import { GET } from '@/app/api/v1/openapi.json/route';
import { TOKEN_SCOPES } from '@/lib/store/tokens';

interface Operation {
  security: { token: string[] }[];
  responses: Record<string, unknown>;
}
interface Document {
  openapi: string;
  paths: Record<string, Record<string, Operation>>;
  components: { schemas: Record<string, { properties?: Record<string, unknown> }> };
}

const document = async () => (await GET().json()) as Document;

describe('the OpenAPI document', () => {
  it('names every endpoint that there is, and none that there is not', async () => {
    const files = readdirSync('app/api/v1', { recursive: true, encoding: 'utf8' });
    const there = files
      .filter((file) => file.endsWith('route.ts'))
      .map((file) => `/${dirname(file).replaceAll('[', '{').replaceAll(']', '}')}`)
      .filter((path) => path !== '/openapi.json');
    expect(Object.keys((await document()).paths).sort()).toEqual(there.sort());
  });

  it('asks for a scope at every endpoint and says how it refuses', async () => {
    for (const [path, operations] of Object.entries((await document()).paths)) {
      for (const [method, { security, responses }] of Object.entries(operations)) {
        expect(TOKEN_SCOPES, `${method} ${path}`).toContain(security[0]?.token[0]);
        expect(Object.keys(responses)).toEqual(expect.arrayContaining(['401', '403', '429']));
      }
    }
  });

  it('refers to no schema that it does not hold', async () => {
    const whole = await document();
    expect(whole.openapi).toBe('3.1.0');
    const referred = [...JSON.stringify(whole).matchAll(/#\/components\/schemas\/(\w+)/g)].map(
      ([, name = '']) => name,
    );
    expect(new Set(referred)).toEqual(new Set(Object.keys(whole.components.schemas)));
    expect(Object.keys(whole.components.schemas.BatchReport?.properties ?? {})).toEqual([
      ...['technicians', 'gauges', 'heights', 'rounds', 'first_time_right'],
    ]);
  });
});
