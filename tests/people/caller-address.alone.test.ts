import { expect, test, vi } from 'vitest';
import { config } from '@/lib/config';
import { callerAddress } from '@/lib/people/caller-address';

vi.mock('@/lib/config', async (original) => {
  const real = await original<typeof import('@/lib/config')>();
  return { ...real, config: { ...real.config } };
});

// Addresses of RFC 5737 and RFC 3849, set aside for documentation.
test('behind a trusted proxy the caller is the address that the proxy wrote last', () => {
  config.isBehindProxy = true;
  expect(callerAddress(new Headers({ 'x-forwarded-for': '198.51.100.9, 192.0.2.7' }))).toBe('192.0.2.7');
  expect(callerAddress(new Headers({ 'x-forwarded-for': '2001:db8::7' }))).toBe('2001:db8::7');
  expect(callerAddress(new Headers())).toBeNull();
});

test('without one nobody is believed', () => {
  config.isBehindProxy = false;
  expect(callerAddress(new Headers({ 'x-forwarded-for': '198.51.100.9' }))).toBeNull();
});
