import { MoneyField } from '@/app/ui/forms/money-field';
import { Select } from '@/app/ui/forms/select';
import { TextField } from '@/app/ui/forms/text-field';
import { decimalText } from '@/lib/money/amount';
import { OFFERED_KINDS, type QuoteLine } from '@/lib/quotes/rules/lines';
import type { WorkshopCard } from '@/lib/workshop/records';
import { type Tax, taxLabel, taxValue } from './taxes';

const KIND_WORDS: Record<(typeof OFFERED_KINDS)[number], string> = {
  labour: 'Labour',
  part: 'Part',
  postage: 'Postage',
  'inspection-fee': 'Inspection fee',
  'return-fee': 'Return fee',
  discount: 'Discount (minus)',
  adjustment: 'Adjustment',
};

type Props = {
  index: number;
  line: QuoteLine | undefined;
  /** the first is the one a new line starts with */
  taxes: readonly Tax[];
  workshop: WorkshopCard;
  repairNames: readonly string[];
  /** where other lines can stand alone, as after a price that is taken from the catalogue */
  mayBeEmpty?: boolean;
};

/** One line of a changed price; where the catalogue knows one tax only, there is nothing to choose. */
export function OfferLine({ index, line, taxes, workshop, repairNames, mayBeEmpty = index > 0 }: Props) {
  const [usual] = taxes;
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
        optional={mayBeEmpty}
        maxLength={200}
        list={[...repairNames]}
        defaultValue={line?.description}
      />
      <MoneyField
        name={`amount-${index}`}
        label={workshop.pricesIncludeTax ? 'Amount with tax' : 'Amount before tax'}
        currency={workshop.currency}
        optional={mayBeEmpty}
        defaultValue={line ? decimalText(line.amount, workshop.currency) : undefined}
      />
      {taxes.length > 1 ? (
        <Select
          name={`tax-${index}`}
          label={workshop.taxName || 'Tax'}
          choices={taxes.map((tax) => ({ value: taxValue(tax), label: taxLabel(tax) }))}
          defaultValue={line ? taxValue(line) : usual && taxValue(usual)}
        />
      ) : null}
    </fieldset>
  );
}
