import { format } from 'node:util';
import { afterEach, beforeEach } from 'vitest';

/** Kept beside the console: files that share a process share its console, and each runs this file anew. */
type Silence = { isAllowed: boolean; written: string[] };
const KEY = Symbol.for('mendpost.silence');
const silence: Silence = Reflect.get(globalThis, KEY) ?? begin();

function begin(): Silence {
  const made: Silence = { isAllowed: false, written: [] };
  Reflect.set(globalThis, KEY, made);
  for (const level of ['error', 'warn'] as const) {
    const pass = console[level].bind(console);
    console[level] = (...values: unknown[]) => {
      made.written.push(`console.${level}: ${format(...values)}`);
      pass(...values);
    };
  }
  return made;
}

/** Lets the running test write to console.error and console.warn; for tests whose subject is that output. */
export function allowConsole(): void {
  silence.isAllowed = true;
}

// What was written while the file was loading stays, and fails its first test.
beforeEach(() => {
  silence.isAllowed = false;
});

// Failing after the test, not inside the call, so that code which catches errors cannot hide it.
afterEach(() => {
  const lines = silence.written;
  silence.written = [];
  if (silence.isAllowed || lines.length === 0) return;
  throw new Error(`The test wrote to the console without allowConsole():\n${lines.join('\n')}`);
});
