import { ActionForm } from '@/app/ui/forms/action-form';
import { ConfirmButton } from '@/app/ui/forms/confirm-button';
import { Select } from '@/app/ui/forms/select';
import { SubmitButton } from '@/app/ui/forms/submit';
import { sheetsOf } from '@/lib/bench/rules/job-sheets';
import { factsOf } from '@/lib/jobs/facts';
import { mayProveBeside } from '@/lib/jobs/rules/under-repair';
import { walkInRepairs } from '@/lib/jobs/walk-in-repairs';
import { may, type Role } from '@/lib/people/rules/roles';
import { carriedFields } from '../carried-fields';
import type { SheetProps } from '../open-sheet';
import { leaveBesideAction, proveBesideAction } from './actions';

/** Repairs that are done beside the job's own, and how one more is proved with it; nothing at stages where that stays as it is. */
export async function BesidePart({ job, role }: { job: SheetProps['job']; role: Role }) {
  if (!may(role, 'bench') || !mayProveBeside(factsOf(job)).allowed) return null;
  const proved = new Set(sheetsOf(job).map(({ repairId }) => repairId));
  const others = (await walkInRepairs()).filter(
    ({ id, modelId }) => modelId === job.model.id && !proved.has(id),
  );
  if (others.length === 0 && job.besides.length === 0) return null;
  return (
    <section id="beside" aria-label="Repairs done beside it">
      {job.besides.map(({ id, sheet }) => (
        <ActionForm
          key={id}
          action={leaveBesideAction.bind(null, job.number, id)}
          hidden={carriedFields(job.version)}
          label={`Leave out ${sheet.repair.name}`}
          summary={`“${sheet.repair.name}” was not done after all`}
        >
          <ConfirmButton
            label="Leave its checks out"
            question={`Prove this job without the checks of “${sheet.repair.name}”?`}
            confirm="Yes, leave them out"
            consequence="What was entered on them stays with the job, and is not on the certificate. Where its price was agreed to, write another one. No mail."
          />
        </ActionForm>
      ))}
      {others.length > 0 ? (
        <ActionForm
          action={proveBesideAction.bind(null, job.number)}
          hidden={carriedFields(job.version)}
          label="Prove another repair as well"
          summary="Another repair is done as well"
        >
          <p>
            Its checks join this sheet and must pass before the unit may go back. Work that the agreed price
            names is added by the customer’s yes. What they are to pay needs a changed price.
          </p>
          <Select
            name="beside"
            label="What is done as well"
            empty="Choose one"
            choices={others.map(({ id, repair }) => ({ value: id, label: repair }))}
          />
          <SubmitButton label="Prove it as well" kind="second" consequence="No mail." />
        </ActionForm>
      ) : null}
    </section>
  );
}
