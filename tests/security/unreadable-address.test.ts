import { NextRequest } from 'next/server';
import { expect, test } from 'vitest';
import { config } from '@/lib/config';
import { proxy } from '@/proxy';

const asked = (path: string) => proxy(new NextRequest(`http://127.0.0.1:3000${path}`));

test.each(['/prices/%00', '/terms?answer=%00', '/workshop/jobs?q=a%00b', '/certificate/%E0%A4%A'])(
  '%s is led to the page that says so, and not asked for over HTTP',
  async (path) => {
    const answer = await asked(path);
    expect(answer.status).toBe(303);
    expect(answer.headers.get('location')).toBe(new URL('/nothing-here', config.appUrl).href);
    expect(answer.headers.get('x-middleware-rewrite')).toBeNull();
  },
);

test('an address with a percent code of its own is asked as it stands', async () => {
  const answer = await asked('/workshop/jobs?q=%2500');
  expect(answer.headers.get('x-middleware-next')).toBe('1');
});
