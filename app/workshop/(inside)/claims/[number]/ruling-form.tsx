import { ActionForm } from '@/app/ui/forms/action-form';
import { RadioGroup } from '@/app/ui/forms/choices';
import { SubmitButton } from '@/app/ui/forms/submit';
import { TextArea } from '@/app/ui/forms/text-area';
import { Notice } from '@/app/ui/page/notice';
import { CAUSE_TABLE, causeRow } from '@/lib/warranty/rules/causes';
import { inspectionState } from '@/lib/warranty/rules/inspection';
import { SHORTEST_REASON } from '@/lib/warranty/rules/ruling';
import { CATCH_QUESTION } from '@/lib/warranty/rules/ruling-sentences';
import { readInspection } from '@/lib/warranty/stored-inspection';
import { RULING_WORDS } from '../words';
import { rule } from './actions';
import type { CaseProps } from './open-case';
import { NOTHING_ELSE } from './schema';
import { ToldAtOnce } from './told-at-once';

/** The table of causes as the choices themselves, so that whoever rules sees what follows from each. */
export function RulingForm({ found }: CaseProps) {
  const { claim, job } = found;
  const state = inspectionState(claim.inspection.map(readInspection));
  // What was said of a ruling that no longer stands is shown above, and is not to go out with the next one unread.
  const isAnew = claim.contestedAt !== null || claim.reopenedAt !== null;
  const photos = claim.inspection.filter((entry) => entry.photoId !== null).length;
  return (
    <>
      {state.isComplete ? null : (
        <Notice kind="note" heading="The inspection is not complete">
          <p>
            {photos === 0
              ? 'Without a photo in the inspection only “covered” can be ruled.'
              : 'You can rule, but what nobody has looked at cannot be shown later.'}
          </p>
        </Notice>
      )}
      <ActionForm
        action={rule.bind(null, claim.number)}
        hidden={{ version: job.version }}
        label="Rule on the claim"
      >
        <RadioGroup
          name="cause"
          label="What caused it?"
          hint="One cause. The ruling follows from it."
          choices={CAUSE_TABLE.map((row) => ({
            value: row.cause,
            label: row.label,
            hint: `${ruledWhen(row.ruling, row.needsVisibleEvidence)} ${row.because}`,
          }))}
        />
        <RadioGroup
          name="alsoFound"
          label="Was something else found besides, that the certificate does not cover?"
          hint="A covered cause together with one of these is partly covered."
          defaultValue={NOTHING_ELSE}
          choices={[
            { value: NOTHING_ELSE, label: 'No, the one cause explains everything' },
            { value: 'separate-fault', label: causeRow('separate-fault').label },
            { value: 'damage-after-return', label: causeRow('damage-after-return').label },
          ]}
        />
        <RadioGroup
          name="evidence"
          label="Is the evidence clear?"
          hint="Unclear means covered: an unusual failure is not by itself the customer’s fault."
          choices={[
            { value: 'clear', label: 'Clear: a photo of the inspection shows it' },
            { value: 'unclear', label: 'Unclear: I cannot say for sure' },
          ]}
        />
        {claim.isLate ? (
          <RadioGroup
            name="letIn"
            label="It came after cover had ended. Let it in?"
            hint="Let in, it is ruled on as if cover still ran. Not let in, it is not covered, whatever the cause; rights by law stay."
            choices={[
              { value: 'yes', label: 'Yes, let it in' },
              { value: 'no', label: 'No' },
            ]}
          />
        ) : null}
        <TextArea
          name="reasonText"
          label="The reason, for the customer"
          hint={`They read it as it stands. Say what you saw and where, and never whose fault it is. Anything but covered needs ${SHORTEST_REASON} characters or more.`}
          optional
          rows={5}
          maxLength={4000}
          defaultValue={isAnew ? undefined : (claim.reasonText ?? undefined)}
        />
        <TextArea
          name="lesson"
          label={CATCH_QUESTION}
          hint="For us. It can become a check on the sheet of this repair."
          optional
          rows={3}
          maxLength={1000}
          defaultValue={claim.lesson ?? undefined}
        />
        <ToldAtOnce />
        <SubmitButton
          label="Rule on the claim"
          busy="Ruling…"
          consequence="Covered is final and told to the customer at once: you are asked before. Anything else waits for the owner’s second look, and nobody is told before that."
        />
      </ActionForm>
    </>
  );
}

function ruledWhen(ruling: (typeof CAUSE_TABLE)[number]['ruling'], needsEvidence: boolean): string {
  const words = RULING_WORDS[ruling];
  const shown = `${words.charAt(0).toUpperCase()}${words.slice(1)}`;
  return needsEvidence ? `${shown}, where a photo shows it.` : `${shown}.`;
}
