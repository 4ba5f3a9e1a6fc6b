import { RadioGroup } from '@/app/ui/forms/choices';
import { CountField } from '@/app/ui/forms/count-field';
import { Select } from '@/app/ui/forms/select';
import { TermField } from '@/app/ui/forms/term-field';
import { TextArea } from '@/app/ui/forms/text-area';
import { TextField } from '@/app/ui/forms/text-field';
import type { PolicyTerms } from '@/lib/warranty/rules/terms';
import { choicesOf, HELD_HINTS, HELD_WORDS, START_WORDS } from '../words';

type Props = { known?: { name: string; terms: PolicyTerms } | undefined };

const YES_NO = [
  { value: 'yes', label: 'Yes' },
  { value: 'no', label: 'No' },
];

/** What a policy promises, for a new one and for the next version. */
export function PolicyFields({ known }: Props) {
  const terms = known?.terms;
  const yesOrNo = (answer: boolean | undefined) => (answer === false ? 'no' : 'yes');
  return (
    <>
      <TextField name="name" label="Name" width="half" autoComplete="off" defaultValue={known?.name} />
      <TermField
        name="workTerm"
        label="Term on the work"
        hint="Empty when not covered."
        defaultValue={terms ? terms.workTerm : 'P12M'}
      />
      <TermField
        name="partsTerm"
        label="Term on fitted parts"
        hint="Empty when not covered."
        defaultValue={terms ? terms.partsTerm : 'P12M'}
      />
      <Select
        name="startEvent"
        label="Counted from"
        hint="The day itself is not counted. Where delivery starts it, the latest usual day of the carrier is taken."
        width="half"
        choices={choicesOf(START_WORDS)}
        defaultValue={terms?.startEvent ?? 'handed-to-carrier'}
      />
      <TermField
        name="renewedMinimum"
        label="Least term after a covered claim"
        hint="The line runs on for what remained or for this, whichever is longer. Empty for no least term."
        defaultValue={terms ? terms.renewedMinimum : 'P90D'}
      />
      <RadioGroup
        name="heldRule"
        label="Days a unit spends here on a claim"
        choices={choicesOf(HELD_WORDS).map((choice) => ({ ...choice, hint: HELD_HINTS[choice.value] }))}
        defaultValue={terms?.heldRule ?? 'whole-days'}
      />
      <RadioGroup
        name="rollLastDay"
        label="A last day on a weekend or holiday moves to the next working day"
        choices={YES_NO}
        defaultValue={yesOrNo(terms?.rollLastDay)}
      />
      <CountField
        name="graceDays"
        label="Days of grace"
        hint="On these days after the end a person decides, not the program."
        defaultValue={terms?.graceDays ?? 7}
      />
      <RadioGroup
        name="transferable"
        label="Cover follows the unit to a new holder"
        choices={YES_NO}
        defaultValue={yesOrNo(terms?.transferable)}
      />
      <TextArea
        name="exclusions"
        label="What is not covered"
        hint="One a line, in words a customer understands. Rights by law stay whatever is written here."
        optional
        rows={5}
        defaultValue={terms?.exclusions.join('\n')}
      />
    </>
  );
}
