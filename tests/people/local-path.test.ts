import fc from 'fast-check';
import { expect, test } from 'vitest';
import { localPath } from '@/lib/people/rules/local-path';

test.each([
  ['the workshop itself', '/workshop'],
  ['a page inside', '/workshop/jobs/J4K7QX29D'],
  ['a page with a question', '/workshop/jobs?stage=ready&page=2'],
  ['an escaped character', '/workshop/search?q=MR4%2D0581'],
])('%s is kept', (_name, path) => {
  expect(localPath(path, '/workshop')).toBe(path);
});

// The ways in which a browser leaves the site, from the URL Standard (https://url.spec.whatwg.org, "special schemes":
// a backslash counts as a slash, tabs and line ends are dropped, two slashes begin a host).
test.each([
  ['nothing', undefined],
  ['an empty text', ''],
  ['another host', 'https://example.net/workshop'],
  ['a host without scheme', '//example.net/workshop'],
  ['a host behind a backslash', '/\\example.net/workshop'],
  ['a backslash later on', '/workshop\\..\\..\\example.net'],
  ['a tab that browsers drop', '/\t/example.net'],
  ['a line end', '/workshop\n//example.net'],
  ['a script', 'javascript:alert(1)'],
  ['a scheme without slashes', 'https:example.net'],
  ['a customer page', '/prices'],
  ['a way out through dots', '/workshop/../job/token'],
  ['a way out through escaped dots', '/workshop/%2e%2e/job/token'],
  ['a longer first word', '/workshops'],
  ['the sign-in page', '/workshop/sign-in?then=/workshop'],
  ['the second step', '/workshop/second-step'],
  ['choosing a password', '/workshop/sign-in/new-password'],
  ['a very long address', `/workshop/${'a'.repeat(600)}`],
])('%s leads to the start page', (_name, path) => {
  expect(localPath(path, '/workshop')).toBe('/workshop');
});

test('whatever is typed, the answer stays on this site and inside the workshop', () => {
  const nasty = fc.stringMatching(/^[/\\.@:?#a-z%\t\n ]{0,20}$/).map((tail) => `/workshop${tail}`);
  fc.assert(
    fc.property(fc.oneof(fc.string(), nasty), (text) => {
      const url = new URL(localPath(text, '/workshop'), 'https://mend.example.org');
      expect(url.origin).toBe('https://mend.example.org');
      expect(url.pathname).toMatch(/^\/workshop(\/|$)/);
    }),
  );
});
