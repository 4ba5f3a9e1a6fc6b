import { expect, test } from 'vitest';
import { permissionOf } from '@/lib/jobs/rules/move-permissions';
import { MOVES, type MoveKey } from '@/lib/jobs/rules/stages';
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

// Common practice, no source. By role instead of by permission, as above: bench and money are apart, and the owner decides alone.
const MOVES_OF: Record<'both' | 'front' | 'bench' | 'owner', MoveKey[]> = {
  both: [
    'arrive',
    'cancel',
    'is-of-booking',
    'undo-arrival',
    'return-unrepaired',
    'stop-repair',
    'pack-unrepaired',
    'dispatch',
    'close',
    'came-back',
    'undo-dispatch',
    'take-up-again',
  ],
  front: [
    'ask-approval',
    'approve',
    'decline',
    'decline-the-rest',
    'approve-after-no',
    'approve-late',
    'approve-late-waiting',
    'decline-late',
    'decline-the-rest-late',
    'decline-the-rest-late-waiting',
    'contest',
    'take-back-price',
    'withdraw',
  ],
  bench: [
    'assess',
    'start-bench',
    'wait-for-parts',
    'parts-in',
    'prove',
    'fail-check',
    'pass-checks',
    'reopen-work',
    'repair-after-all',
  ],
  owner: ['look-again', 'set-aside', 'settle-unclaimed'],
};

test.each(ROLES)('%s may make these moves of a job and no others', (role) => {
  const ofHouse = MOVES.filter(({ by }) => by.some((who) => who === 'staff' || who === 'owner'));
  const granted = ofHouse.flatMap(({ key }) => (may(role, permissionOf(key)) ? [key] : []));
  const expected = role === 'owner' ? Object.values(MOVES_OF).flat() : [...MOVES_OF.both, ...MOVES_OF[role]];
  expect(granted.toSorted()).toEqual(expected.toSorted());
});
