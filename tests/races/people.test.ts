import { beforeEach, describe, expect, it } from 'vitest';
import { db } from '@/lib/db/client';
import { attempt } from '@/lib/outcome';
import { addStaff } from '@/lib/people/add-staff';
import { changeStaff } from '@/lib/people/change-staff';
import { ensureFirstOwner } from '@/lib/people/first-owner';
import { resetDatabase, useDatabase } from '@/tests/database';
import { shownNow } from '@/tests/makers/shown';
import { makeStaff } from '@/tests/people/staff';

const NOW = new Date('2026-11-25T09:00:00Z');
const ROUNDS = [1, 2, 3, 4, 5];

useDatabase();
beforeEach(resetDatabase, 30_000);

describe('people, whoever races', () => {
  it('two who add the same address at once make one account', async () => {
    const add = (name: string) =>
      attempt(() => addStaff({ name, email: 'ines@example.org', role: 'front' }, NOW));
    const outcomes = await Promise.all([add('Ines Berg'), add('Otto Lund')]);
    expect(outcomes.flatMap((each) => (each.ok ? [] : [each.refusal]))).toMatchObject([
      { code: 'conflict', field: 'email' },
    ]);
    expect(await db.user.count()).toBe(1);
  });

  it.each(ROUNDS)('of two owners who step down at the same moment one stays, round %i', async () => {
    const owners = [];
    for (const name of ['Rowan', 'Ines']) {
      const owner = await makeStaff(name, 'owner');
      owners.push({ ...owner, initials: name.slice(0, 1), shown: await shownNow('person', owner.id) });
    }
    const outcomes = await Promise.all(
      owners.map(({ email, initials, shown }) =>
        attempt(() =>
          changeStaff(shown, { name: 'Somebody', email, initials, role: 'bench', isActive: true }),
        ),
      ),
    );
    expect(outcomes.flatMap((each) => (each.ok ? [] : [each.refusal]))).toMatchObject([
      { code: 'conflict', field: 'role' },
    ]);
    expect(await db.user.count({ where: { role: 'owner', isActive: true } })).toBe(1);
  });

  it.each(ROUNDS)('four instances that start together make one owner, round %i', async () => {
    const made = await Promise.all([1, 2, 3, 4].map(() => ensureFirstOwner()));
    expect(made.filter(Boolean)).toHaveLength(1);
    expect(await db.user.count()).toBe(1);
  });
});
