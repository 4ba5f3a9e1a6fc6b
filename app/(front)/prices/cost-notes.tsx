import { Facts } from '@/app/ui/docket/facts';
import { formatMoney } from '@/lib/money/amount';
import type { WorkshopCard } from '@/lib/workshop/card';

/** What may cost something beside the price of a repair, and when. */
export function CostNotes({ workshop }: { workshop: WorkshopCard }) {
  const money = (minor: number) => formatMoney(minor, workshop.currency, workshop.locale);
  return (
    <section aria-labelledby="beside" className="mt-12 max-w-text">
      <h2 id="beside" className="mb-2">
        What else may cost something
      </h2>
      <Facts
        items={[
          {
            term: 'Posting it to us',
            text: 'You choose the carrier and pay the postage to us. The way back is in the price.',
          },
          { term: 'Inspection', text: inspectionText(workshop, money) },
          {
            term: 'A changed price',
            text: `If we find something else we ask you first. If you say no, ${returnText(workshop, money)}`,
          },
          { term: 'When you pay', text: 'When the repair is done and before the unit goes back.' },
          {
            term: 'If it fails again',
            text: 'Within the cover we put it right free of charge, and pay the postage both ways.',
          },
        ]}
      />
    </section>
  );
}

function inspectionText(workshop: WorkshopCard, money: (minor: number) => string): string {
  if (workshop.inspectionFeeMinor === 0) return 'Finding out what is wrong costs nothing.';
  const fee = `Finding a fault that is not on this list costs ${money(workshop.inspectionFeeMinor)}. We tell you before`;
  return workshop.isInspectionFeeTakenOff
    ? `${fee}, and take it off the price when the repair goes ahead.`
    : `${fee}. It is paid beside the repair.`;
}

function returnText({ returnFeeMinor }: WorkshopCard, money: (minor: number) => string): string {
  if (returnFeeMinor === 0) return 'we send the unit back free of charge.';
  return `we send the unit back for ${money(returnFeeMinor)}.`;
}
