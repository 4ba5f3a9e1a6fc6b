/** `npm run owner:reset -- ADDRESS [--second-step-off]`: a temporary password for an owner who is locked out. */
import { now } from '@/lib/clock';
import { attempt } from '@/lib/outcome';
import { resetOwner } from '@/lib/people/reset-owner';
import { TEMPORARY_PASSWORD_DAYS } from '@/lib/people/rules/passwords';
import { withDatabase } from './with-database';

const secondStepOff = '--second-step-off';
const given = process.argv.slice(2);
const [email, ...more] = given.filter((argument) => argument !== secondStepOff);
if (!email || more.length > 0 || email.startsWith('-')) {
  console.error(`Usage: npm run owner:reset -- ADDRESS [${secondStepOff}]`);
  process.exit(2);
}

const isSecondStepOff = given.includes(secondStepOff);
const outcome = await attempt(() => withDatabase(() => resetOwner(email, { now: now(), isSecondStepOff })));
if (!outcome.ok) {
  console.error(outcome.refusal.message);
  process.exit(1);
}
console.log(`Temporary password, shown only now: ${outcome.value.temporaryPassword}
It opens the account for ${TEMPORARY_PASSWORD_DAYS} days and is replaced at the first sign-in. All devices are signed out.${
  isSecondStepOff ? '\nThe second step is off.' : ''
}`);
