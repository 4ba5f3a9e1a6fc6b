import { Table } from '@/app/ui/page/table';
import { minutesOf } from '@/lib/bench/rules/minutes-by';
import { formatMoney } from '@/lib/money/amount';
import { claimCost } from '@/lib/warranty/rules/claim-cost';
import { isCoveredAtLeastPartly } from '@/lib/warranty/rules/ruling';
import { readRuling, type StoredRuling } from '@/lib/warranty/stored-ruling';
import { paidBack } from '@/lib/warranty/write-closed-claim';
import type { CaseProps } from './open-case';

/** What the claim has really cost the workshop; the customer's side of it stays at nothing. */
export function CostPart({ found, workshop }: CaseProps) {
  const { claim, job } = found;
  const money = (minor: number) => formatMoney(minor, workshop.currency, workshop.locale);
  const isClosed = claim.closedAt !== null;
  const cost = claimCost({
    minutes: claim.costMinutes ?? minutesOf(job.work),
    labourRateMinor: workshop.labourRateMinor,
    parts:
      claim.costPartsMinor === null ? job.partUses : [{ quantity: 1, unitCostMinor: claim.costPartsMinor }],
    postageMinor: claim.costPostageMinor ?? paidBack(job),
  });
  const rows = [
    { what: `${cost.minutes} minutes at ${money(workshop.labourRateMinor)} an hour`, amount: cost.labour },
    { what: 'Parts, at what they were bought for', amount: cost.parts },
    {
      what: isClosed ? 'Postage, both ways' : 'Postage (the way back is known once it is sent)',
      amount: cost.postage,
    },
  ];
  return (
    <section id="cost" aria-labelledby="cost-head">
      <h2 id="cost-head">{isClosed ? 'What it has cost us' : 'What it has cost us so far'}</h2>
      <div className="max-w-[42rem]">
        <Table
          caption="True cost"
          captionHidden
          keep
          rows={rows}
          rowKey={(row) => row.what}
          columns={[
            { head: 'What', kind: 'rowhead', cell: (row) => row.what },
            { head: 'Amount', kind: 'number', cell: (row) => money(row.amount) },
          ]}
          foot={
            <tr>
              <td>Together</td>
              <td data-kind="number">{money(cost.together)}</td>
            </tr>
          }
        />
      </div>
      <p className="text-small text-soft">
        Before tax{isClosed ? ', without what the customer paid for' : ''}. {reserveWords(readRuling(claim))}
      </p>
    </section>
  );
}

/** Only what is covered is reserved for. */
function reserveWords(ruled: StoredRuling | null): string {
  if (!ruled?.isFinal)
    return 'Ruled covered, at least in part, it goes into the reserve that this repair’s price should carry.';
  return isCoveredAtLeastPartly(ruled.ruling)
    ? 'It goes into the reserve that this repair’s price should carry.'
    : 'It is not in the reserve that this repair’s price should carry: that counts what is covered.';
}
