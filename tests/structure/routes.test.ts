import { readdirSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { routes } from '@/e2e/world/routes';

/** The address a file of app answers at: '(front)/job/[token]/page.tsx' gives '/job/[token]'. */
function addressOf(file: string): string {
  const folders = file.split('/').slice(0, -1);
  return `/${folders.filter((folder) => !/^\(.*\)$/.test(folder)).join('/')}`;
}

const answering = readdirSync('app', { recursive: true, encoding: 'utf8' })
  .filter((file) => /(^|\/)(page|route)\.tsx?$/.test(file))
  .map(addressOf);

describe('the table of routes', () => {
  test('has one row for every page and file that the app answers with, and no other', () => {
    expect(answering.length).toBeGreaterThan(30);
    expect(routes.map((route) => route.path).sort()).toEqual(answering.sort());
  });

  test('lets nobody into the workshop without signing in, but for the ways in', () => {
    const open = routes.filter(({ path, may }) => path.startsWith('/workshop') && may.includes('anyone'));
    expect(open.map((route) => route.path)).toEqual(['/workshop/sign-in', '/workshop/second-step']);
  });

  test.each(routes.map((route) => [route.path, route] as const))(
    '%s is tried at its own address',
    (path, route) => {
      expect(route.may.length).toBeGreaterThan(0);
      const tried = (route.example ?? path).split('?')[0] ?? '';
      const pattern = path.replace(/[.]/g, '\\.').replace(/\[\w+\]/g, '[^/]+');
      expect(tried).toMatch(new RegExp(`^${pattern}$`));
      expect(tried).not.toContain('[');
    },
  );

  test.each(routes.filter(({ may }) => may.some((who) => ['draft', 'code', 'private link'].includes(who))))(
    '$path is tried by a stranger too',
    ({ strangers }) => {
      expect(strangers?.length).toBeGreaterThan(0);
    },
  );
});
