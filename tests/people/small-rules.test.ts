import { expect, test } from 'vitest';
import { describeDevice } from '@/lib/people/rules/device';
import { initialsOf } from '@/lib/people/rules/initials';
import { keyFromAddress, otpauthAddress } from '@/lib/people/rules/otpauth';

test.each([
  ['Mira Holt', 'MH'],
  ['Mira van Holt', 'MVH'],
  ['Anne-Lise Berg Sund', 'ALB'],
  ['Tove', 'TO'],
  ['élodie quay', 'ÉQ'],
  ['  Ines   Alder ', 'IA'],
  ['', ''],
])('the initials of "%s" are %s', (name, initials) => {
  expect(initialsOf(name)).toBe(initials);
});

// Test vectors of RFC 4648 section 10 for Base32, with the padding taken off as apps expect.
test.each([
  ['f', 'MY'],
  ['fo', 'MZXQ'],
  ['foo', 'MZXW6'],
  ['foob', 'MZXW6YQ'],
  ['fooba', 'MZXW6YTB'],
  ['foobar', 'MZXW6YTBOI'],
  // RFC 6238 Appendix B, the SHA-1 seed; its Base32 form is widely printed.
  ['12345678901234567890', 'GEZDGNBVGY3TQOJQGEZDGNBVGY3TQOJQ'],
])('the key "%s" is written %s', (secret, key) => {
  const address = new URL(otpauthAddress({ issuer: 'Quay & Alder', account: 'mira@example.org', secret }));
  expect(address.searchParams.get('secret')).toBe(key);
  expect(address.searchParams.get('issuer')).toBe('Quay & Alder');
  expect(decodeURIComponent(address.pathname)).toBe('/Quay & Alder:mira@example.org');
  expect(keyFromAddress(address.href).replaceAll(' ', '')).toBe(key);
});

// Shapes as browsers send them today (from memory, versions changed).
test.each([
  ['Mozilla/5.0 (Android 15; Mobile; rv:140.0) Gecko/140.0 Firefox/140.0', 'Firefox on Android'],
  [
    'Mozilla/5.0 (Windows NT 10.0; Win64; x64) AppleWebKit/537.36 (KHTML, like Gecko) Chrome/140.0.0.0 Safari/537.36 Edg/140.0.0.0',
    'Edge on Windows',
  ],
  [
    'Mozilla/5.0 (iPhone; CPU iPhone OS 18_0 like Mac OS X) AppleWebKit/605.1.15 (KHTML, like Gecko) Version/18.0 Mobile/15E148 Safari/604.1',
    'Safari on iPhone',
  ],
  ['curl/8.5.0', 'A browser'],
  [null, 'An unknown device'],
])('%s is described as %s', (userAgent, device) => {
  expect(describeDevice(userAgent)).toBe(device);
});
