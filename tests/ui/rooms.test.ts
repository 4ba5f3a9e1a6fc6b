import { expect, test } from 'vitest';
import { roomsOf } from '@/app/ui/frame/rooms';
import { routes } from '@/e2e/world/routes';
import { ROLES } from '@/lib/people/rules/roles';

const everyRoom: readonly string[] = roomsOf('owner').map(({ href }) => href);

test('the owner is offered every room', () => {
  expect(everyRoom).toHaveLength(13);
});

// e2e/access.spec.ts asks every address of that table with every role.
test.each(ROLES)('the bar offers %s each room whose page they may open, and no other', (role) => {
  const open = routes.filter(({ path, may }) => everyRoom.includes(path) && may.includes(role));
  expect(
    roomsOf(role)
      .map(({ href }) => href)
      .sort(),
  ).toEqual(open.map(({ path }) => path).sort());
});
