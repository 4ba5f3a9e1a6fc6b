import { readFileSync } from 'node:fs';
import { config } from '@/lib/config';

/**
 * The present instant. With CLOCK_FILE set (tests and demonstrations only) it is the ISO instant in that file, read
 * each time so that a test can move the clock while the app runs.
 */
export function now(): Date {
  if (!config.clockFile) return new Date();
  const text = readFileSync(config.clockFile, 'utf8').trim();
  const instant = new Date(text);
  if (Number.isNaN(instant.getTime())) throw new RangeError(`CLOCK_FILE holds no ISO instant: ${text}`);
  return instant;
}
