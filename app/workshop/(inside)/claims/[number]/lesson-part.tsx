import { ActionForm } from '@/app/ui/forms/action-form';
import { Select } from '@/app/ui/forms/select';
import { SubmitButton } from '@/app/ui/forms/submit';
import { Notice } from '@/app/ui/page/notice';
import { TextLink } from '@/app/ui/page/text-link';
import { CheckFields } from '@/app/workshop/(inside)/catalogue/repairs/[id]/sheet/check-fields';
import { readRepair } from '@/lib/catalogue/staff-records';
import { may } from '@/lib/people/rules/roles';
import { isCoveredAtLeastPartly } from '@/lib/warranty/rules/ruling';
import { CATCH_QUESTION } from '@/lib/warranty/rules/ruling-sentences';
import { readRuling } from '@/lib/warranty/stored-ruling';
import { teachCheck } from './actions';
import type { CaseProps } from './open-case';

/** What a covered claim teaches: the note of whoever ruled, and the checks it put on the sheet of its repair. */
export async function LessonPart({ found, who }: CaseProps) {
  const { claim, job } = found;
  const ruled = readRuling(claim);
  if (!ruled?.isFinal || !isCoveredAtLeastPartly(ruled.ruling)) return null;
  const repair = await readRepair(job.repair.id);
  const newest = repair?.sheets[0];
  const taught = newest?.checks.filter((check) => check.lesson === claim.number) ?? [];
  return (
    <section id="lesson" aria-labelledby="lesson-head">
      <h2 id="lesson-head">{CATCH_QUESTION}</h2>
      <p className="written">{claim.lesson ? claim.lesson : 'Nobody has written that down.'}</p>
      {taught.length > 0 ? (
        <Notice kind="good" heading="It is on the sheet">
          <ul>
            {taught.map((check) => (
              <li key={check.id}>{check.label}</li>
            ))}
          </ul>
          <p>
            <TextLink href={`/workshop/catalogue/repairs/${job.repair.id}/sheet`}>
              {`Check sheet of ${job.repair.name}, version ${newest?.version ?? 1}`}
            </TextLink>
          </p>
        </Notice>
      ) : (
        <p>
          No check has come of it yet.{' '}
          <TextLink href={`/workshop/catalogue/repairs/${job.repair.id}/sheet`}>
            {`Check sheet of ${job.repair.name}`}
          </TextLink>
        </p>
      )}
      {newest && may(who.role, 'rule-claim') ? (
        <ActionForm
          action={teachCheck.bind(null, claim.number, newest.version)}
          hidden={{ version: job.version }}
          label="Put a check on the sheet"
          summary="Put a check on the sheet"
        >
          <CheckFields />
          {may(who.role, 'catalogue') ? (
            <Select
              name="replaces"
              label="In the place of"
              optional
              width="half"
              empty="None: it is added at the end"
              hint="A check that was there, but let this pass."
              choices={newest.checks.map((check, i) => ({ value: String(i + 1), label: check.label }))}
            />
          ) : null}
          <SubmitButton
            label="Put it on the sheet"
            busy="Writing…"
            consequence={`Makes version ${newest.version + 1} of the sheet. Units booked from now on must pass it; those already booked keep theirs.`}
          />
        </ActionForm>
      ) : null}
    </section>
  );
}
