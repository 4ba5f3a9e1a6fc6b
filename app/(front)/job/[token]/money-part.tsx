import { Facts } from '@/app/ui/docket/facts';
import { LinkButton } from '@/app/ui/page/button';
import { PriceTable } from '@/app/ui/page/price-table';
import { dayFromDate } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';
import { balanceOf, isForPrice } from '@/lib/invoices/rules/balance';
import { backSentence } from '@/lib/invoices/rules/money-words';
import { factsOf } from '@/lib/jobs/facts';
import { promiseToCome } from '@/lib/jobs/rules/promise-to-come';
import { NO_MORE_NEWS } from '@/lib/jobs/rules/stage-sets';
import { formatMoney } from '@/lib/money/amount';
import { agreedOf, isAgreedTo } from '@/lib/quotes/rules/agreed';
import { shownPrice } from '@/lib/quotes/rules/shown-price';
import { readLine } from '@/lib/quotes/stored-lines';
import { isCoveredAtLeastPartly } from '@/lib/warranty/rules/ruling';
import { isNoFault } from './next-facts';
import type { PartProps } from './part-props';
import { PayPart } from './pay-part';

/** The agreed price, the invoice, what was paid, what is left, and how to pay it. */
export function MoneyPart({ job, token, workshop }: PartProps) {
  const money = (minor: number) => formatMoney(minor, workshop.currency, workshop.locale);
  const shortDay = (date: Date) => formatDay(dayFromDate(date), workshop.locale, 'short');
  const agreed = agreedOf(job);
  if (!agreed) return null;
  if (!isAgreedTo(agreed)) {
    return (
      <section aria-labelledby="money">
        <h2 id="money">Price</h2>
        <p>
          {job.payments.some(isForPrice)
            ? 'No price is agreed yet. What you have paid counts towards it, and you pay nothing more before you have said yes to one.'
            : 'No price is agreed yet. You pay nothing before you have said yes to one.'}
        </p>
        <Facts items={paidFacts(job, money, shortDay)} />
        <ReceiptLink job={job} token={token} />
      </section>
    );
  }
  const { owed } = balanceOf(job);
  // The price of a claim is written as if it were covered; until it is, the customer is told what is certain.
  if (isNotCoveredYet(job)) {
    return (
      <section aria-labelledby="money">
        <h2 id="money">Price</h2>
        <p>{`Looking at your claim is free. You pay nothing${mayPriceCome(job) ? ' unless you say yes to a price' : ''}.`}</p>
        <Facts
          items={[
            ...paidFacts(job, money, shortDay),
            { term: 'Left to pay', text: money(Math.max(0, owed)) },
          ]}
        />
      </section>
    );
  }
  const invoice = job.invoices.findLast((paper) => paper.kind === 'invoice');
  return (
    <section aria-labelledby="money">
      <h2 id="money">Price</h2>
      <PriceTable
        caption="Agreed"
        price={shownPrice({ ...agreed, lines: agreed.lines.map(readLine) }, workshop.taxName)}
        money={money}
      />
      <Facts
        items={[
          ...job.invoices.map((paper) => ({
            term: `${paper.kind === 'invoice' ? 'Invoice' : 'Credit note'} ${paper.number}`,
            text: `${money(paper.kind === 'invoice' ? paper.payableMinor : -paper.payableMinor)}, ${shortDay(paper.issuedOn)}`,
          })),
          ...paidFacts(job, money, shortDay),
          { term: 'Left to pay', text: money(Math.max(0, owed)) },
          {
            term: 'Pay by',
            text:
              invoice && owed > 0 ? formatDay(dayFromDate(invoice.dueOn), workshop.locale, 'weekday') : null,
          },
          {
            term: 'Comes back to you',
            text: owed < 0 ? `${money(-owed)}. ${backSentence('it')}` : null,
          },
        ]}
      />
      <PayPart job={job} workshop={workshop} owed={owed} />
      <p>
        <LinkButton href={`/job/${token}/quote.pdf`} kind="quiet" file>
          The newest price (PDF)
        </LinkButton>
      </p>
      {job.invoices.map((paper) => (
        <p key={paper.id}>
          <LinkButton href={`/job/${token}/invoice/${paper.number}`} kind="quiet" file>
            {`${paper.kind === 'invoice' ? 'Invoice' : 'Credit note'} ${paper.number} (PDF)`}
          </LinkButton>
        </p>
      ))}
      <ReceiptLink job={job} token={token} />
    </section>
  );
}

/** A claim of which nothing is ruled covered, with no price agreed beside it and no paper that needs its lines. */
function isNotCoveredYet(job: PartProps['job']): boolean {
  const { kind, ruling, hasAgreedPaidOffer } = factsOf(job);
  return (
    kind === 'claim' &&
    !isCoveredAtLeastPartly(ruling) &&
    !hasAgreedPaidOffer &&
    agreedOf(job)?.grossMinor === 0 &&
    job.invoices.length === 0 &&
    !job.payments.some(isForPrice)
  );
}

/** Of a claim: until its ruling, and after one that leaves a paid repair open. */
function mayPriceCome(job: PartProps['job']): boolean {
  const facts = factsOf(job);
  if (NO_MORE_NEWS.includes(facts.stage)) return false;
  return facts.ruling === null || promiseToCome({ ...facts, isNoFault: isNoFault(job) }) !== null;
}

/** Every payment, and what was given back, with its day. */
function paidFacts(
  job: PartProps['job'],
  money: (minor: number) => string,
  shortDay: (date: Date) => string,
): { term: string; text: string }[] {
  return job.payments.map((payment) => ({
    term: `${paidWord(payment)} on ${shortDay(payment.receivedOn)}`,
    text: `${money(Math.abs(payment.amountMinor))}, ${payment.method}`,
  }));
}

function paidWord(payment: { amountMinor: number; purpose: string }): string {
  const isBack = payment.amountMinor < 0;
  if (isForPrice(payment)) return isBack ? 'Given back' : 'Paid';
  return isBack ? 'Your postage paid back' : 'Entry of your postage corrected';
}

function ReceiptLink({ job, token }: Pick<PartProps, 'job' | 'token'>) {
  if (!job.payments.some(isForPrice)) return null;
  return (
    <p>
      <LinkButton href={`/job/${token}/receipt.pdf`} kind="quiet" file>
        Receipt (PDF)
      </LinkButton>
    </p>
  );
}
