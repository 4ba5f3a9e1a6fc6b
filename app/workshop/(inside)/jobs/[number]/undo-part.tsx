import { ActionForm } from '@/app/ui/forms/action-form';
import { ConfirmButton } from '@/app/ui/forms/confirm-button';
import { TextArea } from '@/app/ui/forms/text-area';
import type { JobRecord } from '@/lib/jobs/records';
import type { MoveAnswer } from '@/lib/jobs/rules/guards';
import { permissionOf } from '@/lib/jobs/rules/move-permissions';
import { openedFirst } from '@/lib/jobs/rules/of-booking';
import { type MoveKey, moveOf } from '@/lib/jobs/rules/stages';
import { mayUndoDispatch } from '@/lib/jobs/rules/undone';
import { showNumber } from '@/lib/numbers/job-number';
import { may, type Role } from '@/lib/people/rules/roles';
import { goneFacts } from '@/lib/warranty/undo-dispatch';
import { carriedFields } from './carried-fields';
import { notGone, notHere } from './undo-actions';

type Props = {
  job: JobRecord;
  moves: readonly { move: { key: MoveKey }; answer: MoveAnswer }[];
  role: Role;
  at: { now: Date; timeZone: string };
};

/** The moves that take back what was entered by mistake: that a unit is here, and that it left. */
export async function UndoPart({ job, moves, role, at }: Props) {
  const isOpen = (key: MoveKey) =>
    may(role, permissionOf(key)) && moves.some(({ move, answer }) => move.key === key && answer.allowed);
  return (
    <>
      {isOpen('undo-arrival') ? (
        <UndoForm
          job={job}
          move="undo-arrival"
          action={notHere}
          sample="Two parcels came on one day."
          besides={afterUndo(openedFirst(job.events))}
        />
      ) : null}
      {isOpen('undo-dispatch') && mayUndoDispatch(await goneFacts(job, at)).allowed ? (
        <UndoForm job={job} move="undo-dispatch" action={notGone} sample="The job above was meant." />
      ) : null}
    </>
  );
}

/** The job that was opened first has ended for good, so the unit on the table would be left without one. */
const afterUndo = (opened: string | null) =>
  opened === null
    ? ''
    : ` Job ${showNumber(opened)}, opened for it first, does not come back, and the customer’s messages stay here: take the unit in under its own booking, or open a job for it.`;

type FormProps = {
  job: JobRecord;
  move: MoveKey;
  action: typeof notHere;
  sample: string;
  /** what follows from it for this very job */
  besides?: string;
};

function UndoForm({ job, move, action, sample, besides = '' }: FormProps) {
  const { label, consequence } = moveOf(move);
  return (
    <ActionForm action={action.bind(null, job.number)} hidden={carriedFields(job.version)} label={label}>
      <ConfirmButton
        label={label}
        question={`${label}?`}
        confirm={`Yes: ${label.toLowerCase()}`}
        consequence={`${consequence}${besides}`}
      >
        <TextArea
          name="reason"
          label="What happened, in words for the customer"
          hint={`For example: ${sample}`}
          rows={2}
          maxLength={500}
        />
      </ConfirmButton>
    </ActionForm>
  );
}
