import { ActionForm } from '@/app/ui/forms/action-form';
import { ConfirmButton } from '@/app/ui/forms/confirm-button';
import { CountField } from '@/app/ui/forms/count-field';
import { MoneyField } from '@/app/ui/forms/money-field';
import { SubmitButton } from '@/app/ui/forms/submit';
import { TextField } from '@/app/ui/forms/text-field';
import type { readLot } from '@/lib/bench/part-records';
import { decimalText } from '@/lib/money/amount';
import type { WorkshopCard } from '@/lib/workshop/card';
import { addToLotAction, correctLotAction, writeOffAction } from '../../actions';
import { OfOrder } from '../../of-order';

type Lot = NonNullable<Awaited<ReturnType<typeof readLot>>>;

/** What the bench does to a lot beside fitting its pieces: putting right what was typed, adding pieces, taking them out of stock. */
export function LotForms({ lot, workshop }: { lot: Lot; workshop: WorkshopCard }) {
  const { currency, locale } = workshop;
  return (
    <>
      <section aria-labelledby="right" className="mt-12">
        <h2 id="right" className="mb-3">
          Put it right
        </h2>
        <ActionForm
          action={correctLotAction.bind(null, lot.id)}
          hidden={{ mark: lot.mark }}
          label="Put the lot right"
          summary="Correct its code, supplier, day or cost"
        >
          <TextField
            name="code"
            label="Lot"
            hint="As on the bag or the delivery note."
            mono
            width="half"
            autoComplete="off"
            defaultValue={lot.code}
          />
          <TextField name="supplier" label="Supplier" width="half" defaultValue={lot.supplier} />
          <TextField
            name="receivedOn"
            label="Received on"
            type="date"
            width="half"
            defaultValue={lot.receivedOn}
          />
          <MoneyField
            name="unitCost"
            label="Cost of one piece, without tax"
            currency={currency}
            defaultValue={decimalText(lot.unitCostMinor, currency)}
          />
          <SubmitButton
            label="Correct the lot"
            consequence="What it said before stays in its history. Certificates that were issued keep the lot’s code as it was, and pieces that were fitted their cost."
          />
        </ActionForm>
      </section>
      <section aria-labelledby="more" className="mt-12">
        <h2 id="more" className="mb-3">
          More of this lot
        </h2>
        <ActionForm
          action={addToLotAction.bind(null, lot.id)}
          hidden={{ received: lot.received }}
          label="Add pieces to the lot"
          summary="Add pieces that came later, or were not counted"
        >
          <CountField name="quantity" label="Pieces" />
          <OfOrder orders={lot.orders} locale={locale} isDelivery={false} />
          <MoneyField
            name="unitCost"
            label="Cost of one piece, without tax"
            currency={currency}
            defaultValue={decimalText(lot.unitCostMinor, currency)}
          />
          <SubmitButton
            label="Add them"
            consequence="They count as in stock. What one costs becomes the mean of those in stock and these."
          />
        </ActionForm>
      </section>
      {lot.inStock > 0 ? (
        <section aria-labelledby="off" className="mt-12">
          <h2 id="off" className="mb-3">
            Lost, broken or not to be trusted
          </h2>
          <ActionForm
            action={writeOffAction.bind(null, lot.id)}
            hidden={{ inStock: lot.inStock }}
            label="Take pieces out of stock"
          >
            <ConfirmButton
              label="Take pieces out of stock"
              question="How many pieces will not be fitted?"
              confirm="Yes, take them out"
              consequence="They can no longer be chosen at the bench. Units that carry the lot stay listed here."
            >
              <CountField name="quantity" label="Pieces" defaultValue={lot.inStock} />
              <TextField
                name="reason"
                label="Why"
                hint="Kept with the lot, with your name."
                maxLength={300}
              />
            </ConfirmButton>
          </ActionForm>
        </section>
      ) : null}
    </>
  );
}
