import { expect, test } from 'vitest';
import { routeOf } from '@/lib/serving/route-patterns';

const patterns = [
  { page: '/', matches: /^\/(?:\/)?$/ },
  { page: '/prices', matches: /^\/prices(?:\/)?$/ },
  { page: '/job/[token]/slip.pdf', matches: /^\/job\/([^/]+?)\/slip\.pdf(?:\/)?$/ },
];

test.each([
  ['/', '/'],
  ['/prices?search=ottilie', '/prices'],
  ['/job/Q2xhdXNl/slip.pdf', '/job/[token]/slip.pdf'],
  ['/job/Q2xhdXNl', 'unmatched'],
  ['/_next/static/chunks/a.js', '/_next'],
  ['*', 'unmatched'],
])('%s belongs to %s', (address, route) => {
  expect(routeOf(address, patterns)).toBe(route);
});
