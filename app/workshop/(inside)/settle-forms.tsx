import { ActionForm } from '@/app/ui/forms/action-form';
import type { FormAction } from '@/app/ui/forms/form-state';
import { SubmitButton } from '@/app/ui/forms/submit';
import { TextArea } from '@/app/ui/forms/text-area';
import { lastWaiting } from '@/lib/jobs/rules/settled';

/** Two ways to take a customer's words off today's page without writing to them; nothing where none wait. */
export function SettleForms(props: {
  messages: Parameters<typeof lastWaiting>[0];
  action: FormAction;
  version: number;
}) {
  const last = lastWaiting(props.messages);
  if (last === null) return null;
  const seen = { version: props.version, message: last.id };
  return (
    <>
      <ActionForm
        action={props.action}
        hidden={{ ...seen, how: 'no-answer-needed' }}
        label="The message needs no answer"
      >
        <SubmitButton
          kind="second"
          label="Needs no answer"
          consequence="Takes it off today’s page. Nothing is sent."
        />
      </ActionForm>
      <ActionForm
        action={props.action}
        hidden={{ ...seen, how: 'answered-otherwise' }}
        label="Answered some other way"
        summary="Answered some other way"
      >
        <TextArea
          name="note"
          label="How it was answered"
          hint="For example: by telephone on Tuesday, it may cost £20 more."
          rows={2}
          maxLength={1000}
        />
        <SubmitButton
          kind="second"
          label="Keep that it is answered"
          consequence="Takes it off today’s page. Nothing is sent."
        />
      </ActionForm>
    </>
  );
}
