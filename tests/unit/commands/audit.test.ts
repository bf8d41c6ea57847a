import { describe, expect, it } from 'vitest';
import { readAudit } from '@/lib/commands/audit.mjs';

/** As `npm audit --json` prints it (npm 11). */
const report = (vulnerabilities: Record<string, { severity: string }>) =>
  JSON.stringify({
    auditReportVersion: 2,
    vulnerabilities,
    metadata: { vulnerabilities: { total: Object.keys(vulnerabilities).length } },
  });

describe('the answer to an audit', () => {
  it('counts high and critical holes by package, and milder ones not', () => {
    const answer = report({
      a: { severity: 'high' },
      b: { severity: 'moderate' },
      c: { severity: 'critical' },
    });
    expect(readAudit(`npm warn something\n${answer}\nnpm notice\n`)).toEqual({
      answered: true,
      holes: ['a: high', 'c: critical'],
    });
    expect(readAudit(report({}))).toEqual({ answered: true, holes: [] });
  });

  it('is told apart from no answer: a registry without audits, no network, no text', () => {
    const refused = {
      message: '405 Method Not Allowed',
      statusCode: 405,
      error: { summary: '', detail: '' },
    };
    for (const output of [JSON.stringify(refused), 'npm error code ENOTFOUND', ''])
      expect(readAudit(output)).toEqual({ answered: false });
  });
});
