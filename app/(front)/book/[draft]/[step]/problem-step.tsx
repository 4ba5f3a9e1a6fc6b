import { ActionForm } from '@/app/ui/forms/action-form';
import { CheckboxGroup } from '@/app/ui/forms/choices';
import { SubmitBar } from '@/app/ui/forms/submit';
import { TextArea } from '@/app/ui/forms/text-area';
import { HISTORY } from '@/lib/jobs/rules/booking';
import { saveProblem } from '../../actions';
import type { StepProps } from './step-props';

export function ProblemStep({ token, answers }: StepProps) {
  return (
    <ActionForm action={saveProblem.bind(null, token)}>
      <TextArea
        name="problem"
        label="What does it do, or not do?"
        hint="In your own words. When it started, and whether it comes and goes, helps most."
        maxLength={2000}
        defaultValue={answers.problem?.problem}
      />
      <CheckboxGroup
        name="history"
        label="Did any of this happen?"
        hint="Nothing you tick here is held against you. It tells us where to look."
        optional
        choices={Object.entries(HISTORY).map(([value, label]) => ({ value, label }))}
        defaultValues={answers.problem?.history ?? []}
      />
      <SubmitBar
        label="Continue"
        consequence="Next: what you send along."
        second={{ href: `/book/${token}/unit`, label: 'Back' }}
      />
    </ActionForm>
  );
}
