import { expect, it, vi } from 'vitest';
import { forgetRemembered, rememberFor } from '@/lib/remembered';

const at = (seconds: number) => new Date(Date.UTC(2026, 10, 25, 9, 0, seconds));

it('reads once for a key until its time is over, also for two who ask at once', async () => {
  const kept = rememberFor<string>(60_000);
  const read = vi.fn(async () => `reading ${read.mock.calls.length}`);
  const both = await Promise.all([kept.of('GB', at(0), read), kept.of('GB', at(0), read)]);
  expect([...both, await kept.of('GB', at(59), read)]).toEqual(['reading 1', 'reading 1', 'reading 1']);
  expect(await kept.of('GB/SCT', at(59), read)).toBe('reading 2');
  expect(await kept.of('GB', at(60), read)).toBe('reading 3');
});

it('does not keep what failed, and what came after it is not lost when it fails late', async () => {
  const kept = rememberFor<string>(60_000);
  let fail: (error: Error) => void = () => {};
  const late = kept.of('GB', at(0), () => new Promise((_, reject) => (fail = reject)));
  kept.forget();
  await kept.of('GB', at(0), async () => 'second');
  fail(new Error('connection lost'));
  await expect(late).rejects.toThrow('connection lost');
  expect(await kept.of('GB', at(1), async () => 'third')).toBe('second');

  await expect(kept.of('FR', at(0), () => Promise.reject(new Error('connection lost')))).rejects.toThrow();
  expect(await kept.of('FR', at(0), async () => 'asked again')).toBe('asked again');
});

it('forgets all at once', async () => {
  const [one, other] = [rememberFor<number>(60_000), rememberFor<number>(60_000)];
  await one.of('a', at(0), async () => 1);
  await other.of('a', at(0), async () => 1);
  forgetRemembered();
  expect(await one.of('a', at(0), async () => 2)).toBe(2);
  expect(await other.of('a', at(0), async () => 2)).toBe(2);
});
