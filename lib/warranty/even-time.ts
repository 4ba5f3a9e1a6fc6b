import { setTimeout } from 'node:timers/promises';

type Pace = { read: () => number; wait: (milliseconds: number) => Promise<unknown> };

const REAL: Pace = { read: () => performance.now(), wait: (milliseconds) => setTimeout(milliseconds) };

/**
 * Runs some work and answers only when a whole number of steps has passed since it began, so that the time of an answer
 * tells nothing about what was found. Work longer than one step waits for the next: on a busy machine the answer is
 * later, not more telling. A failure is thrown as late as an answer is given.
 */
export async function inEvenTime<T>(step: number, work: () => Promise<T>, pace: Pace = REAL): Promise<T> {
  const began = pace.read();
  try {
    return await work();
  } finally {
    const spent = pace.read() - began;
    await pace.wait(Math.max(1, Math.ceil(spent / step)) * step - spent);
  }
}
