import { ActionForm } from '@/app/ui/forms/action-form';
import { ConfirmButton } from '@/app/ui/forms/confirm-button';
import { SubmitButton } from '@/app/ui/forms/submit';
import { TextLink } from '@/app/ui/page/text-link';
import { moveCheckAction } from './actions';

type Props = { repairId: string; version: number; check: { position: number; label: string } };

/** What can be done to one check: change it, move it, take it off. */
export function MoveForm({ repairId, version, check }: Props) {
  return (
    <details className="mt-1">
      <summary className="py-1 text-small">
        Change<span className="sr-only"> {check.label}</span>
      </summary>
      <div className="mt-2 grid gap-3">
        <p>
          <TextLink
            href={`/workshop/catalogue/repairs/${repairId}/sheet/${check.position}`}
            className="inline-block py-1"
          >
            Change what it says
          </TextLink>
        </p>
        <ActionForm
          action={moveCheckAction.bind(null, repairId, version)}
          hidden={{ position: check.position }}
          label={`Move ${check.label}`}
        >
          <div className="flex flex-wrap gap-3">
            <SubmitButton kind="second" name="move" value="up" label="Up" />
            <SubmitButton kind="second" name="move" value="down" label="Down" />
          </div>
          <ConfirmButton
            label="Take it off the sheet"
            question={`No longer check “${check.label}”?`}
            confirm="Yes, take it off"
            consequence="Only for jobs booked from now on."
            name="move"
            value="off"
          />
        </ActionForm>
      </div>
    </details>
  );
}
