import { spawnSync } from 'node:child_process';
import { chmodSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, expect, test } from 'vitest';

const folder = mkdtempSync(path.join(tmpdir(), 'mendpost-audit-'));
afterAll(() => rmSync(folder, { recursive: true }));

/** .ci/audit with an npm that answers this and ends with that code. */
function audit(answer: string, code: number) {
  const npm = path.join(folder, 'npm');
  writeFileSync(npm, `#!/bin/sh\ncat <<'END'\n${answer}\nEND\nexit ${code}\n`);
  chmodSync(npm, 0o755);
  const env = { ...process.env, PATH: `${folder}:${process.env['PATH']}` };
  return spawnSync('.ci/audit', { env, encoding: 'utf8' });
}

test('a known vulnerability fails the check and is shown', () => {
  const { status, stdout } = audit('{ "auditReportVersion": 2, "vulnerabilities": { "left": {} } }', 1);
  expect(status).toBe(1);
  expect(stdout).toContain('"left"');
});

test('a clean report passes', () => {
  expect(audit('{ "auditReportVersion": 2, "vulnerabilities": {} }', 0).status).toBe(0);
});

test('a registry that is away is said, and fails nothing', () => {
  const { status, stdout } = audit('{ "message": "connect ECONNREFUSED", "error": {} }', 1);
  expect(status).toBe(0);
  expect(stdout).toMatch(/^Warning: .+ not audited\.\n$/);
});
