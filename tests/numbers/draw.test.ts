import { describe, expect, it } from 'vitest';
import { newNumber, withRandomSource } from '@/lib/numbers/draw';
import { readNumber } from '@/lib/numbers/job-number';

/** 0, 1, 2 … over and over: plain to follow by hand. */
function counting(): (below: number) => number {
  let next = 0;
  return (below) => next++ % below;
}

const later = () => new Promise((resolve) => setTimeout(resolve, 1));

describe('newNumber', () => {
  it('draws by chance: a thousand numbers are a thousand different ones, each readable', () => {
    const numbers = Array.from({ length: 1000 }, () => newNumber('J'));
    expect(new Set(numbers).size).toBe(1000);
    for (const number of numbers) expect(readNumber(number)).toEqual({ ok: true, kind: 'J', number });
  });

  it('draws the same numbers again from the same source', async () => {
    const draw = () => withRandomSource(counting(), async () => [newNumber('J'), newNumber('W')]);
    const first = await draw();
    expect(first[0]).toMatch(/^J0123456/);
    expect(await draw()).toEqual(first);
  });

  it('keeps the source through what is awaited, and only there', async () => {
    const inside = withRandomSource(counting(), async () => {
      await later();
      return newNumber('J');
    });
    const beside = newNumber('J');
    expect(await inside).toMatch(/^J0123456/);
    expect(beside).not.toMatch(/^J0123456/);
    expect(newNumber('J')).not.toMatch(/^J0123456/);
  });

  it('keeps two sources that run at once apart', async () => {
    const draw = (source: () => number) =>
      withRandomSource(source, async () => {
        const one = newNumber('C');
        await later();
        return [one, newNumber('C')];
      });
    const [zeros, ones] = await Promise.all([draw(() => 0), draw(() => 1)]);
    for (const number of zeros) expect(number).toMatch(/^C0000000/);
    for (const number of ones) expect(number).toMatch(/^C1111111/);
  });
});
