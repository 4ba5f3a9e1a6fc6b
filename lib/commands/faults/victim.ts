/**
 * The app of a run, in a process of its own to be killed: the use cases as they are asked for, and the mail worker.
 * Its database and mail server come in the environment.
 */
import { z } from 'zod';
import { disconnect } from '@/lib/db/client';
import { openWorker, type Worker } from '@/lib/mail/worker';
import { confirm, draft, onward, paper } from './course';

// Prisma asks for several relations at once inside a transaction; pg announces that it will stop queueing them.
process.noDeprecation = true;

const asked = z.intersection(
  z.object({ id: z.number() }),
  z.discriminatedUnion('step', [
    z.object({ step: z.literal('begin') }),
    z.object({ step: z.literal('draft'), n: z.number() }),
    z.object({ step: z.literal('book'), token: z.string() }),
    z.object({ step: z.literal('onward'), jobId: z.string(), payment: z.string() }),
    z.object({ step: z.literal('paper'), number: z.string() }),
    z.object({ step: z.literal('stop') }),
  ]),
);

let worker: Worker | undefined;

process.on('message', (message) => {
  const given = asked.parse(message);
  answer(given).then(
    (value) => process.send?.({ id: given.id, ok: true, value }),
    (error: unknown) => process.send?.({ id: given.id, ok: false, error: String(error) }),
  );
});
// As lib/serving/stop.ts has it: without whoever started it, its database may be gone.
process.on('disconnect', () => process.exit(1));

function answer(given: z.infer<typeof asked>): Promise<unknown> {
  switch (given.step) {
    case 'begin':
      return begin();
    case 'draft':
      return draft(given.n);
    case 'book':
      return confirm(given.token);
    case 'onward':
      return onward(given);
    case 'paper':
      return paper(given.number);
    case 'stop':
      return (worker?.stop() ?? Promise.resolve()).then(disconnect);
  }
}

async function begin(): Promise<void> {
  // The house's own pace would make a run wait for minutes where it need not.
  worker = await openWorker({
    smtpUrl: process.env['SMTP_URL'],
    pollSeconds: 0.5,
    superviseSeconds: 1,
    recoverSeconds: 5,
  });
}
