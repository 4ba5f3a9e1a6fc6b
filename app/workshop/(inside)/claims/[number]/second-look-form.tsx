import { ActionForm } from '@/app/ui/forms/action-form';
import { SubmitButton } from '@/app/ui/forms/submit';
import { Notice } from '@/app/ui/page/notice';
import { PhotoStrip } from '@/app/ui/photos/photo';
import { decideSecondLook } from './actions';
import { casePhoto } from './case-photos';
import type { CaseProps } from './open-case';

/** The owner's second look at a ruling other than covered, with the photos it rests on. */
export function SecondLookForm({ found, workshop, who }: CaseProps) {
  const { claim, job } = found;
  const evidence = new Set(claim.inspection.flatMap((entry) => (entry.photoId ? [entry.photoId] : [])));
  const photos = job.photos.filter((photo) => evidence.has(photo.id));
  return (
    <>
      <h3>Second look</h3>
      <PhotoStrip
        label="Photos the ruling rests on"
        photos={photos.map((photo) => casePhoto(photo, workshop, 'thumb'))}
      />
      {claim.ruledBy === who.id ? (
        <Notice kind="note" heading="You made this ruling yourself">
          <p>Look again with fresh eyes: would the photos convince somebody who was not there?</p>
        </Notice>
      ) : null}
      <ActionForm
        action={decideSecondLook.bind(null, claim.number)}
        hidden={{ version: job.version }}
        label="Second look"
      >
        <SubmitButton
          name="decision"
          value="confirm"
          label="Confirm the ruling"
          busy="Confirming…"
          consequence={
            claim.contestedAt
              ? 'Sends the customer the ruling with its reason and photos. It was contested once, so it stands.'
              : 'Sends the customer the ruling with its reason and photos. They can contest it once.'
          }
        />
        <SubmitButton
          kind="second"
          name="decision"
          value="undo"
          label="Take it back"
          busy="Taking it back…"
          consequence="The ruling is undone and the claim waits to be ruled on again. Nobody is told."
        />
      </ActionForm>
    </>
  );
}
