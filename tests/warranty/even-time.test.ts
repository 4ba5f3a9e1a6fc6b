import { describe, expect, it } from 'vitest';
import { inEvenTime } from '@/lib/warranty/even-time';

/** A clock that only moves when somebody works or waits. */
function madeClock() {
  let at = 0;
  return {
    read: () => at,
    wait: async (milliseconds: number) => {
      at += milliseconds;
    },
  };
}

describe('an answer in even time', () => {
  it.each([
    ['nothing found at once', 0, 800],
    ['a quick look-up', 12, 800],
    ['a look-up and a message', 310, 800],
    ['work of exactly one step', 800, 800],
    ['work longer than a step', 801, 1600],
    ['work of several steps', 2400, 2400],
  ])('%s: %i ms of work are answered after %i ms', async (_name, work, expected) => {
    const clock = madeClock();
    const answer = await inEvenTime(800, () => clock.wait(work).then(() => 'done'), clock);
    expect([answer, clock.read()]).toEqual(['done', expected]);
  });

  it('fails as late as it answers', async () => {
    const clock = madeClock();
    const failing = inEvenTime(800, () => Promise.reject(new Error('the database is away')), clock);
    await expect(failing).rejects.toThrow('the database is away');
    expect(clock.read()).toBe(800);
  });

  it('waits by the clock of the machine', async () => {
    const began = performance.now();
    await inEvenTime(40, async () => {});
    // Timers of Node may fire a little early; without the wait it would be well under a millisecond.
    expect(performance.now() - began).toBeGreaterThanOrEqual(30);
  });
});
