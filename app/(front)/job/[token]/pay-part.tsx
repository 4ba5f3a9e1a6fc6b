import { Facts } from '@/app/ui/docket/facts';
import { Qr } from '@/app/ui/docket/qr';
import { NumberText } from '@/app/ui/words/number-text';
import { workingDaysWords } from '@/lib/calendar/working';
import { paidAlready } from '@/lib/invoices/rules/money-words';
import { waysToPay } from '@/lib/invoices/rules/ways-to-pay';
import { readStage } from '@/lib/jobs/records';
import { BEFORE_READY, PAY_STAGES } from '@/lib/jobs/rules/stage-sets';
import { formatMoney } from '@/lib/money/amount';
import { showNumber } from '@/lib/numbers/job-number';
import type { PartProps } from './part-props';

/** How to pay what is left: once there is an invoice, or once the price can no longer change. */
export function PayPart({ job, workshop, owed }: Omit<PartProps, 'token'> & { owed: number }) {
  const invoice = job.invoices.findLast((paper) => paper.kind === 'invoice');
  if (!invoice && !PAY_STAGES.includes(readStage(job.stage))) return null;
  const ways = waysToPay(workshop, {
    amount: owed,
    currency: workshop.currency,
    reference: invoice?.number ?? showNumber(job.number),
  });
  if (!ways) return null;
  const amount = formatMoney(owed, workshop.currency, workshop.locale);
  const { bank } = ways;
  const isEarly = !invoice && BEFORE_READY.includes(readStage(job.stage));
  return (
    <div className="mt-6 flex flex-col gap-3">
      <h3 id="pay">How to pay</h3>
      {isEarly ? <p>You pay when it is ready. If you would rather pay now, this is how.</p> : null}
      {ways.link ? (
        <p>
          <a href={ways.link} className={`button ${isEarly ? 'button-second' : 'button-main'}`}>
            {`Pay ${amount} online`}
          </a>
        </p>
      ) : null}
      <Facts
        items={[
          { term: 'Bank transfer to', text: bank?.holder },
          { term: 'IBAN', text: bank ? <NumberText text={bank.iban} /> : null },
          { term: 'BIC', text: bank?.bic ? <NumberText text={bank.bic} /> : null },
          { term: 'Amount', text: amount },
          { term: 'Reference', text: <NumberText text={bank?.creditorReference ?? ways.reference} /> },
        ]}
      />
      {bank?.qr ? (
        <figure className="pay-code">
          <Qr text={bank.qr} alt="QR code that fills in the bank transfer in a banking app" />
          <figcaption>Scan it with your banking app: account, amount and reference are in it.</figcaption>
        </figure>
      ) : null}
      {ways.text ? <p className="written">{ways.text}</p> : null}
      <p>{paidAlready({ within: workingDaysWords(workshop.answerDays), place: 'here' })}</p>
    </div>
  );
}
