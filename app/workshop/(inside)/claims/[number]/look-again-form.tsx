import { ActionForm } from '@/app/ui/forms/action-form';
import { ConfirmButton } from '@/app/ui/forms/confirm-button';
import { TextArea } from '@/app/ui/forms/text-area';
import { factsOf } from '@/lib/jobs/facts';
import { mayMove } from '@/lib/jobs/rules/guards';
import { moveOf } from '@/lib/jobs/rules/stages';
import { actorKind, may } from '@/lib/people/rules/roles';
import { openAgain } from './actions';
import type { CaseProps } from './open-case';

/** The owner's way back from a ruling that was told and turned out to be wrong; nothing where it is shut. */
export function LookAgainForm({ found, who }: CaseProps) {
  const { claim, job } = found;
  const isOpen = mayMove('look-again', factsOf(job), actorKind(who.role)).allowed;
  if (!isOpen || !may(who.role, 'second-look')) return null;
  const { label, consequence } = moveOf('look-again');
  return (
    <ActionForm action={openAgain.bind(null, claim.number)} hidden={{ version: job.version }} label={label}>
      <ConfirmButton
        label={label}
        question="Was this ruling wrong?"
        confirm="Take it back, and tell the customer"
        consequence={consequence}
      >
        <TextArea
          name="reason"
          label="Why, in words for the customer"
          hint="They read it as it stands."
          rows={3}
          maxLength={1000}
        />
      </ConfirmButton>
    </ActionForm>
  );
}
