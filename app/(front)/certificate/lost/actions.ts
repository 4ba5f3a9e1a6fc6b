'use server';
import { limitCaller } from '@/app/limit-caller';
import type { FormAction } from '@/app/ui/forms/form-state';
import { parseForm } from '@/app/ui/forms/parse-form';
import { waitSentence } from '@/app/ui/forms/wait-sentence';
import { now } from '@/lib/clock';
import { ifMailed } from '@/lib/mail/mail-server';
import { attemptKey } from '@/lib/people/caller-address';
import { limitAttempts } from '@/lib/people/limit-attempts';
import { inEvenTime } from '@/lib/warranty/even-time';
import { resendCertificate } from '@/lib/warranty/resend-certificate';
import { readLostNumber } from '@/lib/warranty/rules/lost-number';
import { LOST_ADDRESS_LIMIT, LOST_LIMIT } from '../limit';
import { lostForm } from './schema';

/** Longer than the look-up and its message take, so that finding something and finding nothing look the same. */
const STEP_MILLISECONDS = 800;

const SAME_ANSWER = `If we have a certificate or a job for these, ${ifMailed(
  'a message is on its way to the address on file',
  'we write to the address on file by hand',
)}.`;

export const sendAgain: FormAction = async (_before, formData) => {
  const parsed = parseForm(lostForm, formData);
  const typed = (name: string) => String(formData.get(name) ?? '').trim();
  const reading = readLostNumber(typed('number'), typed('serial'));
  if (!parsed.ok || !reading.ok) {
    const values = { number: typed('number'), serial: typed('serial'), email: typed('email') };
    const wrong = parsed.ok ? {} : parsed.state.errors;
    return { values, errors: { ...(reading.ok ? {} : { number: [reading.sentence] }), ...wrong } };
  }
  const { serial, email } = parsed.data;
  const answers = [
    await limitCaller('certificate-lost', LOST_LIMIT),
    await limitAttempts(attemptKey('certificate-lost-to', email.toLowerCase()), {
      ...LOST_ADDRESS_LIMIT,
      now: now(),
    }),
  ];
  const refused = answers.find(({ allowed }) => !allowed);
  if (refused) return { message: waitSentence(refused.waitSeconds), values: parsed.data };
  await inEvenTime(STEP_MILLISECONDS, () =>
    resendCertificate({
      number: reading.number,
      serial: serial === '' ? null : serial,
      email,
      now: now(),
    }),
  );
  return { done: SAME_ANSWER };
};
