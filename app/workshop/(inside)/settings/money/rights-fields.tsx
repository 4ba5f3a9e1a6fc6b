import { RadioGroup } from '@/app/ui/forms/choices';
import { TextArea } from '@/app/ui/forms/text-area';
import type { WorkshopCard } from '@/lib/workshop/card';

/** What customers are told about withdrawing from the contract, and about a unit to use meanwhile. */
export function RightsFields({ workshop }: { workshop: WorkshopCard }) {
  return (
    <>
      <h2>What customers are told</h2>
      <RadioGroup
        name="withdrawalRule"
        label="Right to withdraw after booking"
        hint="Which law holds for you is for you to find out; ask somebody who knows it where you are unsure."
        defaultValue={workshop.withdrawalRule}
        choices={[
          { value: 'off', label: 'None is told', hint: 'Bookings say nothing about withdrawing.' },
          {
            value: 'eu',
            label: 'European Union',
            hint: 'Fourteen days without a reason, by Directive 2011/83/EU.',
          },
          {
            value: 'uk',
            label: 'United Kingdom',
            hint: 'Fourteen days without a reason, by the Consumer Contracts Regulations 2013.',
          },
        ]}
      />
      <TextArea
        name="replacementText"
        label="A unit to use meanwhile"
        hint="One sentence for quotes: what you lend and what it costs. Empty: none is offered."
        optional
        rows={2}
        maxLength={500}
        defaultValue={workshop.replacementText}
      />
    </>
  );
}
