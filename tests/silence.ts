import { format } from 'node:util';
import { afterEach, beforeEach } from 'vitest';

let isAllowed = false;
let written: string[] = [];

/** Lets the running test write to console.error and console.warn; for tests whose subject is that output. */
export function allowConsole(): void {
  isAllowed = true;
}

for (const level of ['error', 'warn'] as const) {
  const pass = console[level].bind(console);
  console[level] = (...values: unknown[]) => {
    written.push(`console.${level}: ${format(...values)}`);
    pass(...values);
  };
}

// What was written while the file was loading stays, and fails its first test.
beforeEach(() => {
  isAllowed = false;
});

// Failing after the test, not inside the call, so that code which catches errors cannot hide it.
afterEach(() => {
  const lines = written;
  written = [];
  if (isAllowed || lines.length === 0) return;
  throw new Error(`The test wrote to the console without allowConsole():\n${lines.join('\n')}`);
});
