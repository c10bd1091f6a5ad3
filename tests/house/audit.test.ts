import { spawnSync } from 'node:child_process';
import { chmodSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, join, resolve } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';

const script = resolve(import.meta.dirname, '../../.ci/audit.mjs');
let folder = '';

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'takesheet-audit-'));
});
afterEach(() => {
  rmSync(folder, { recursive: true });
});

/** Runs the audit beside an npm that prints this and ends with this status. */
function audit(printed: string, status: number): { status: number | null; said: string } {
  writeFileSync(join(folder, 'printed.json'), printed);
  const npm = join(folder, 'npm');
  writeFileSync(npm, `#!/bin/sh\ncat "$(dirname "$0")/printed.json"\nexit ${status}\n`);
  chmodSync(npm, 0o755);
  const env = { ...process.env, PATH: `${folder}${delimiter}${process.env.PATH}` };
  const ended = spawnSync(process.execPath, [script], { encoding: 'utf8', env });
  return { status: ended.status, said: ended.stdout + ended.stderr };
}

/** Source: npm documentation, `npm audit --json`, audit report version 2. */
function report(counts: Record<string, number>): string {
  const none = { info: 0, low: 0, moderate: 0, high: 0, critical: 0 };
  const total = Object.values(counts).reduce((sum, count) => sum + count, 0);
  const [severity] = Object.keys(counts);
  const fault = { name: 'some-package', severity, via: [{ title: 'reads what it should not' }] };
  return JSON.stringify({
    auditReportVersion: 2,
    vulnerabilities: total > 0 ? { 'some-package': fault } : {},
    metadata: { vulnerabilities: { ...none, ...counts, total } },
  });
}

describe('the audit of packages', () => {
  it('passes when nothing is known', () => {
    expect(audit(report({}), 0)).toMatchObject({ status: 0, said: expect.stringContaining('0 known faults') });
  });

  it('passes on moderate faults, and names them', () => {
    const { status, said } = audit(report({ moderate: 1 }), 0);
    expect(status).toBe(0);
    expect(said).toContain('moderate: some-package: reads what it should not');
  });

  it.each(['high', 'critical'])('fails on a fault that is %s', (severity) => {
    const { status, said } = audit(report({ [severity]: 1 }), 1);
    expect(status).toBe(1);
    expect(said).toContain(`${severity}: some-package`);
  });

  // What npm prints when a registry has no advisories, and when there is none at all.
  it.each([JSON.stringify({ message: '405 Method Not Allowed', statusCode: 405, error: {} }), '', 'no JSON'])(
    'says clearly that it was not done, and goes on: %s',
    (printed) => {
      const { status, said } = audit(printed, 1);
      expect(status).toBe(0);
      expect(said).toContain('NOT DONE');
    },
  );
});
