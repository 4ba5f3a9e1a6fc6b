import { CountField } from '@/app/ui/forms/count-field';
import { MoneyField } from '@/app/ui/forms/money-field';
import { Select } from '@/app/ui/forms/select';
import { TextArea } from '@/app/ui/forms/text-area';
import { TextField } from '@/app/ui/forms/text-field';
import { percentText } from '@/lib/catalogue/rules/percent';
import type { readRepair } from '@/lib/catalogue/staff-records';
import { decimalText } from '@/lib/money/amount';
import type { TaxCategory } from '@/lib/money/tax';
import type { WorkshopCard } from '@/lib/workshop/card';
import { ListedChoice } from '../listed-choice';
import { choicesOf, TAX_WORDS } from '../words';

type Known = NonNullable<Awaited<ReturnType<typeof readRepair>>>;
type Props = {
  known?: Known | undefined;
  policies: readonly { id: string; name: string }[];
  workshop: Pick<WorkshopCard, 'currency' | 'pricesIncludeTax'>;
  /** the tax that was last given to a repair; none for the first */
  lastTax?: { category: TaxCategory; rateBps: number } | undefined;
};

/** What the catalogue knows of a repair, for adding and for changing. */
export function RepairFields({ known, policies, workshop, lastTax }: Props) {
  return (
    <>
      <TextField
        name="name"
        label="Repair"
        hint="What is done, like USB-C socket replaced."
        autoComplete="off"
        defaultValue={known?.name}
      />
      <TextArea
        name="summary"
        label="In a sentence"
        hint="Customers read it on the price list and before they book."
        rows={2}
        maxLength={400}
        defaultValue={known?.summary}
      />
      <MoneyField
        name="price"
        label={workshop.pricesIncludeTax ? 'Price with tax' : 'Price without tax'}
        hint="For the whole repair and the way back."
        currency={workshop.currency}
        defaultValue={known ? decimalText(known.priceMinor, workshop.currency) : undefined}
      />
      <Select
        name="taxCategory"
        label="Tax"
        width="half"
        choices={choicesOf(TAX_WORDS)}
        empty="Choose the tax"
        defaultValue={known?.taxCategory ?? lastTax?.category}
      />
      <TextField
        name="taxRate"
        label="Rate"
        unit="%"
        inputMode="decimal"
        width="short"
        hint="0 where the tax is zero rate, exempt or outside."
        defaultValue={known ? percentText(known.taxRateBps) : lastTax && percentText(lastTax.rateBps)}
      />
      <CountField
        name="minutes"
        label="Bench minutes"
        hint="What it usually takes. The queue, and so the promise, is reckoned with it."
        defaultValue={known?.minutes}
      />
      <CountField
        name="workingDays"
        label="Stated working days"
        hint="Shown on the price list, and promised while there are fewer than twelve finished jobs to count."
        defaultValue={known?.workingDays}
      />
      <TextArea
        name="symptoms"
        label="Symptoms"
        hint="One plain sentence a line. Customers choose from them when they open a claim; a symptom on the list is covered."
        rows={5}
        defaultValue={known?.symptoms.join('\n')}
      />
      <Select
        name="policyId"
        label="Policy"
        width="half"
        empty="Choose a policy"
        choices={policies.map((policy) => ({ value: policy.id, label: policy.name }))}
        defaultValue={known?.policyId ?? (policies.length === 1 ? policies[0]?.id : undefined)}
      />
      <ListedChoice known={known} />
    </>
  );
}
