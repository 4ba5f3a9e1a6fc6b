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
import { readTaughtRepairs } from '@/lib/warranty/stored-taught-repairs';
import { teachCheck } from './actions';
import type { CaseProps } from './open-case';

/**
 * What a covered claim teaches: the note of whoever ruled, and the checks it put on the sheet of its repair, or on that of one which
 * the unit was proved on beside it.
 */
export async function LessonPart({ found, who }: CaseProps) {
  const { claim, job } = found;
  const ruled = readRuling(claim);
  if (!ruled?.isFinal || !isCoveredAtLeastPartly(ruled.ruling)) return null;
  const repairs = await readTaughtRepairs({ jobId: job.id, certificateNumber: claim.certificateNumber });
  const sheets = (await Promise.all(repairs.map(({ id }) => readNewest(id)))).filter((each) => each !== null);
  const teaching = sheets.map((sheet) => ({
    ...sheet,
    taught: sheet.checks.filter((check) => check.lesson === claim.number),
  }));
  const isTaught = teaching.some(({ taught }) => taught.length > 0);
  return (
    <section id="lesson" aria-labelledby="lesson-head">
      <h2 id="lesson-head">{CATCH_QUESTION}</h2>
      <p className="written">{claim.lesson ? claim.lesson : 'Nobody has written that down.'}</p>
      {isTaught ? (
        <Notice kind="good" heading="It is on the sheet">
          {teaching
            .filter(({ taught }) => taught.length > 0)
            .map(({ repairId, name, version, taught }) => (
              <div key={repairId}>
                <ul>
                  {taught.map((check) => (
                    <li key={check.id}>{check.label}</li>
                  ))}
                </ul>
                <p>
                  <SheetLink repairId={repairId} words={`Check sheet of ${name}, version ${version}`} />
                </p>
              </div>
            ))}
        </Notice>
      ) : (
        <>
          <p>No check has come of it yet.</p>
          <ul>
            {repairs.map(({ id, name }) => (
              <li key={id}>
                <SheetLink repairId={id} words={`Check sheet of ${name}`} />
              </li>
            ))}
          </ul>
        </>
      )}
      {may(who.role, 'rule-claim')
        ? sheets.map((sheet) => (
            <TeachForm
              key={sheet.repairId}
              number={claim.number}
              jobVersion={job.version}
              sheet={sheet}
              where={sheets.length > 1 ? `the sheet of ${sheet.name}` : 'the sheet'}
              mayReplace={may(who.role, 'catalogue')}
            />
          ))
        : null}
    </section>
  );
}

type Newest = NonNullable<Awaited<ReturnType<typeof readNewest>>>;

/** The newest version of a repair's check sheet; null where it has none. */
async function readNewest(id: string) {
  const repair = await readRepair(id);
  const newest = repair?.sheets[0];
  return repair && newest
    ? { repairId: id, name: repair.name, version: newest.version, checks: newest.checks }
    : null;
}

function SheetLink({ repairId, words }: { repairId: string; words: string }) {
  return <TextLink href={`/workshop/catalogue/repairs/${repairId}/sheet`}>{words}</TextLink>;
}

type TeachProps = {
  number: string;
  jobVersion: number;
  sheet: Newest;
  /** in the words of the form: 'the sheet', or whose it is where there are several */
  where: string;
  mayReplace: boolean;
};

function TeachForm({ number, jobVersion, sheet, where, mayReplace }: TeachProps) {
  return (
    <ActionForm
      action={teachCheck.bind(null, number, sheet.repairId, sheet.version)}
      hidden={{ version: jobVersion }}
      label={`Put a check on ${where}`}
      summary={`Put a check on ${where}`}
    >
      <CheckFields />
      {mayReplace ? (
        <Select
          name="replaces"
          label="In the place of"
          optional
          width="half"
          empty="None: it is added at the end"
          hint="A check that was there, but let this pass."
          choices={sheet.checks.map((check, i) => ({ value: String(i + 1), label: check.label }))}
        />
      ) : null}
      <SubmitButton
        label="Put it on the sheet"
        busy="Writing…"
        consequence={`Makes version ${sheet.version + 1} of the sheet. Units booked from now on must pass it; those already booked keep theirs.`}
      />
    </ActionForm>
  );
}
