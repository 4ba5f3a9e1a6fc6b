import { beforeEach, describe, expect, it } from 'vitest';
import { db } from '@/lib/db/client';
import { isInTrouble, mailStates, mayGoAgain } from '@/lib/mail/rules/standing';
import { IN_TROUBLE, MAY_GO_AGAIN } from '@/lib/mail/stored-standing';
import { resetDatabase, useDatabase } from '@/tests/database';
import { makeQueuedMail, NOW } from './booking';

useDatabase();
beforeEach(resetDatabase);

describe('where a message stands', () => {
  const every = mailStates.flatMap((state) => [null, NOW].map((bouncedAt) => ({ state, bouncedAt })));

  it.each([
    ['queued', null, { again: true, trouble: false }],
    ['sending', null, { again: false, trouble: false }],
    ['sent', null, { again: false, trouble: false }],
    ['sent', NOW, { again: true, trouble: true }],
    ['failed', null, { again: true, trouble: true }],
    ['kept', null, { again: true, trouble: true }],
  ] as const)('%s, come back %s', (state, bouncedAt, expected) => {
    const mail = { state, bouncedAt };
    expect({ again: mayGoAgain(mail), trouble: isInTrouble(mail) }).toEqual(expected);
  });

  it('is asked of the database as the rule says it, in every state', async () => {
    const { mail } = await makeQueuedMail();
    for (const facts of every) {
      await db.mail.update({ where: { id: mail.id }, data: facts });
      const found = (where: object) => db.mail.count({ where: { id: mail.id, ...where } });
      expect([facts, await found(MAY_GO_AGAIN), await found(IN_TROUBLE)]).toEqual([
        facts,
        mayGoAgain(facts) ? 1 : 0,
        isInTrouble(facts) ? 1 : 0,
      ]);
    }
  });
});
