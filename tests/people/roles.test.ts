import { expect, test } from 'vitest';
import { isRole, may, type Permission, permissionTable, ROLES, rolesThatMay } from '@/lib/people/rules/roles';

// The table is the workshop's own choice (common practice, no source). Written out here a second time, by role instead
// of by permission, so that a slip in one of them shows.
const EXPECTED: Record<(typeof ROLES)[number], Permission[]> = {
  front: ['take-in', 'money', 'dispatch', 'mail'],
  bench: ['take-in', 'bench', 'dispatch', 'rule-claim', 'returns'],
  owner: [
    'take-in',
    'bench',
    'money',
    'dispatch',
    'mail',
    'rule-claim',
    'second-look',
    'recall',
    'returns',
    'returns-cost',
    'returns-people',
    'catalogue',
    'people',
    'personal-data',
    'settings',
  ],
};

test.each(ROLES)('%s may do what the table says and nothing else', (role) => {
  const granted = permissionTable().flatMap(({ permission }) => (may(role, permission) ? [permission] : []));
  expect(granted).toEqual(EXPECTED[role]);
});

test('the owner may do everything', () => {
  expect(permissionTable().every(({ permission }) => may('owner', permission))).toBe(true);
});

test('whoever proposes a ruling cannot give it the second look', () => {
  expect(rolesThatMay('second-look')).toEqual(['owner']);
  expect(may('bench', 'rule-claim')).toBe(true);
});

test('a role is one of three words', () => {
  expect(ROLES.every(isRole)).toBe(true);
  expect(['Owner', 'admin', '', 'owner '].filter(isRole)).toEqual([]);
});
