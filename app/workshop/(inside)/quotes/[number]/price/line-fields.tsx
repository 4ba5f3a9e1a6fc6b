import { MoneyField } from '@/app/ui/forms/money-field';
import { Select } from '@/app/ui/forms/select';
import { TextField } from '@/app/ui/forms/text-field';
import { decimalText } from '@/lib/money/amount';
import { OFFERED_KINDS, type QuoteLine } from '@/lib/quotes/rules/lines';
import type { WorkshopCard } from '@/lib/workshop/card';
import { type Tax, taxKey, taxWords } from '../tax-words';

const KIND_WORDS: Record<(typeof OFFERED_KINDS)[number], string> = {
  labour: 'Labour',
  part: 'Part',
  postage: 'Postage',
  'inspection-fee': 'Inspection fee',
  'return-fee': 'Return fee',
  discount: 'Discount (minus)',
  adjustment: 'Adjustment',
};

/** One line of a quote: kind, what for, how much, which tax. */
export function LineFields(props: {
  index: number;
  line: QuoteLine | undefined;
  workshop: WorkshopCard;
  taxes: readonly Tax[];
}) {
  const { index, line, workshop, taxes } = props;
  const first = taxes[0];
  return (
    <fieldset className="offer-line">
      <legend>{`Line ${index + 1}`}</legend>
      <Select
        name={`kind-${index}`}
        label="Kind"
        choices={OFFERED_KINDS.map((kind) => ({ value: kind, label: KIND_WORDS[kind] }))}
        defaultValue={line?.kind ?? 'labour'}
      />
      <TextField
        name={`description-${index}`}
        label="What"
        optional
        maxLength={200}
        defaultValue={line?.description}
      />
      <MoneyField
        name={`amount-${index}`}
        label={workshop.pricesIncludeTax ? 'Amount with tax' : 'Amount before tax'}
        currency={workshop.currency}
        optional
        defaultValue={line ? decimalText(line.amount, workshop.currency) : undefined}
      />
      <Select
        name={`tax-${index}`}
        label="Tax"
        choices={taxes.map((tax) => ({ value: taxKey(tax), label: taxWords(tax, workshop.taxName) }))}
        defaultValue={line ? taxKey(line) : first ? taxKey(first) : undefined}
      />
    </fieldset>
  );
}
