import { expect, inject, test } from 'vitest';
import { runKills } from '@/lib/commands/faults/kill-run';
import { isOnServer } from '@/tests/database';

/** The long form, with more jobs and kills: `npm run test:faults`. */
test('killed amid bookings, dispatches and mails, the app, its database and both lose nothing and leave no half', async () => {
  const world = inject('world');
  // On the embedded database the app goes with it: app and database are all there is to kill.
  const rounds = isOnServer() ? 3 : 2;
  const { problems, facts } = await runKills({
    kind: isOnServer() ? 'server' : 'embedded',
    rounds,
    jobs: 4,
    hands: 2,
    seed: 20_261_125,
    ...(world.kind === 'embedded' && { template: world.template }),
  });
  expect(problems).toEqual([]);
  expect(facts).toMatchObject({ kills: rounds, dispatched: 4, mails: 20 });
}, 240_000);
