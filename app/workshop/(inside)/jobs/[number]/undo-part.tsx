import { ActionForm } from '@/app/ui/forms/action-form';
import { ConfirmButton } from '@/app/ui/forms/confirm-button';
import { TextArea } from '@/app/ui/forms/text-area';
import type { JobRecord } from '@/lib/jobs/records';
import type { MoveAnswer } from '@/lib/jobs/rules/guards';
import { permissionOf } from '@/lib/jobs/rules/move-permissions';
import { type MoveKey, moveOf } from '@/lib/jobs/rules/stages';
import { mayUndoDispatch } from '@/lib/jobs/rules/undone';
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
        <UndoForm job={job} move="undo-arrival" action={notHere} sample="Two parcels came on one day." />
      ) : null}
      {isOpen('undo-dispatch') && mayUndoDispatch(await goneFacts(job, at)).allowed ? (
        <UndoForm job={job} move="undo-dispatch" action={notGone} sample="The job above was meant." />
      ) : null}
    </>
  );
}

type FormProps = { job: JobRecord; move: MoveKey; action: typeof notHere; sample: string };

function UndoForm({ job, move, action, sample }: FormProps) {
  const { label, consequence } = moveOf(move);
  return (
    <ActionForm action={action.bind(null, job.number)} hidden={carriedFields(job.version)} label={label}>
      <ConfirmButton
        label={label}
        question={`${label}?`}
        confirm={`Yes: ${label.toLowerCase()}`}
        consequence={consequence}
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
