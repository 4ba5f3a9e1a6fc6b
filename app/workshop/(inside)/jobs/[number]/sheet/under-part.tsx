import { ActionForm } from '@/app/ui/forms/action-form';
import { ConfirmButton } from '@/app/ui/forms/confirm-button';
import { Select } from '@/app/ui/forms/select';
import { factsOf } from '@/lib/jobs/facts';
import { mayPutUnder } from '@/lib/jobs/rules/under-repair';
import { walkInRepairs } from '@/lib/jobs/walk-in-repairs';
import { may, type Role } from '@/lib/people/rules/roles';
import { carriedFields } from '../carried-fields';
import type { SheetProps } from '../open-sheet';
import { putUnder } from './actions';

/** How a job that turned out to be another repair goes under it; nothing at other stages, or where there is no other. */
export async function UnderPart({ job, role }: { job: SheetProps['job']; role: Role }) {
  if (!may(role, 'bench') || !mayPutUnder(factsOf(job)).allowed) return null;
  const others = (await walkInRepairs()).filter(({ id }) => id !== job.repair.id);
  if (others.length === 0) return null;
  const own = others.filter(({ modelId }) => modelId === job.model.id);
  const paidBeside = job.besides
    .filter(({ isByPrice }) => isByPrice)
    .map(({ sheet }) => `“${sheet.repair.name}”`);
  const choices = [...own, ...others.filter(({ modelId }) => modelId !== job.model.id)];
  return (
    <section id="under" aria-label="Another repair">
      <ActionForm
        action={putUnder.bind(null, job.number)}
        hidden={carriedFields(job.version)}
        label="Put it under another repair"
        summary="It is another repair"
      >
        <p>
          {`For a job that was booked before anybody had looked. Its check sheet, the work its certificate covers and what is counted of it are then those of the other repair. The price, the promise and the cover agreed to stay. Another price goes with its own repair: write a changed price instead.`}
        </p>
        {paidBeside.length > 0 ? (
          <p>
            {`The agreed price names ${paidBeside.join(' and ')} too. Put under ${paidBeside.length === 1 ? 'it' : 'one of them'}, the job keeps the checks of “${job.repair.name}” beside it, with what was entered on them: the customer pays for both. Where “${job.repair.name}” is not done, leave its checks out and write a changed price without it.`}
          </p>
        ) : null}
        <Select
          name="repair"
          label="What it turned out to be"
          empty="Choose one"
          choices={choices.map((each) => ({ value: each.id, label: each.repair, group: each.unit }))}
        />
        <ConfirmButton
          label="Put it under this repair"
          question="Put this job under the repair you chose?"
          confirm="Yes, put it under that repair"
          consequence={`${sheetWords(job.repair.name, paidBeside.length > 0)} The customer’s page shows the new repair. No mail.`}
        />
      </ActionForm>
    </section>
  );
}

/** What becomes of the checks that were entered. */
function sheetWords(repair: string, isPaidBeside: boolean): string {
  return isPaidBeside
    ? `Its sheet must pass, in its newest version. What was entered for “${repair}” is on the certificate only while that stays beside it.`
    : `Every check of its sheet is entered anew. What was entered for “${repair}” stays with the job, and is not on the certificate.`;
}
