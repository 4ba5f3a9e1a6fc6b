import type { Metadata } from 'next';
import { nothingHere } from '@/app/nothing-here';
import { readWorkshop } from '@/app/read-workshop';
import { Docket, DocketSection } from '@/app/ui/docket/docket';
import { Facts } from '@/app/ui/docket/facts';
import { LinkButton } from '@/app/ui/page/button';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { TextLink } from '@/app/ui/page/text-link';
import { NumberLink } from '@/app/workshop/number-link';
import { dayInZone } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';
import { now } from '@/lib/clock';
import { config } from '@/lib/config';
import { invoiceState } from '@/lib/invoices/rules/state';
import { UBL_PROBLEM_SENTENCES, ublProblems } from '@/lib/invoices/rules/ubl';
import { formatMoney } from '@/lib/money/amount';
import { showNumber } from '@/lib/numbers/job-number';
import { may } from '@/lib/people/rules/roles';
import { requireStaff } from '../../../../who';
import { InvoiceTag } from '../../invoice-tag';
import { invoiceByNumber } from '../../open-invoice';
import { CreditForm } from './credit-form';
import { InvoiceLines } from './invoice-lines';

type Props = { params: Promise<{ number: string }>; searchParams: Promise<{ credited?: string }> };

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  return { title: `Invoice ${(await params).number}` };
}

export default async function InvoicePage({ params, searchParams }: Props) {
  const who = await requireStaff();
  const whole = await invoiceByNumber((await params).number);
  if (!whole) nothingHere();
  const { credited } = await searchParams;
  const { facts, paper, job, left, credits, corrects } = whole;
  const { locale, timeZone } = await readWorkshop();
  const money = (minor: number) => formatMoney(minor, facts.currency, locale);
  const isCredit = facts.kind === 'credit-note';
  const word = isCredit ? 'Credit note' : 'Invoice';
  const state = left ? invoiceState({ leftToCredit: left.payable, owed: job.balance.owed }) : null;
  const problems = ublProblems(paper);
  const here = `/workshop/money/invoices/${facts.number}` as const;
  return (
    <>
      <PageHead
        above={
          may(who.role, 'money') ? (
            <TextLink href="/workshop/money">Money</TextLink>
          ) : (
            <TextLink href={`/workshop/jobs/${job.number}#money`}>{`Job ${showNumber(job.number)}`}</TextLink>
          )
        }
        title={`${word} ${facts.number}`}
        lead={isCredit ? facts.reason : `For ${job.unit}`}
        next={state ? nextOf(state, { owed: job.balance.owed, money }) : undefined}
      />
      {credited ? (
        <Notice kind="good" role="status">
          <p>The credit note is issued, and the customer has mail about it.</p>
        </Notice>
      ) : null}
      <Docket
        kind={word}
        number={facts.number}
        heading={facts.buyer.name}
        tag={<InvoiceTag state={state} dueOn={facts.dueOn} today={dayInZone(now(), timeZone)} />}
        qr={{ text: `${config.appUrl}${here}`, alt: `QR code that opens this ${word.toLowerCase()}` }}
        stubFacts={[
          { term: 'Issued', text: formatDay(facts.issuedOn, locale, 'short') },
          ...(isCredit ? [] : [{ term: 'Pay by', text: formatDay(facts.dueOn, locale, 'short') }]),
        ]}
      >
        <Facts
          items={[
            {
              term: 'Job',
              text: <NumberLink of="jobs" number={job.number} part="money" />,
            },
            {
              term: 'Takes off',
              text: corrects ? (
                <TextLink href={`/workshop/money/invoices/${corrects.number}`}>
                  {`Invoice ${corrects.number}`}
                </TextLink>
              ) : null,
            },
            {
              term: 'Work done',
              text: facts.suppliedOn === null ? null : formatDay(facts.suppliedOn, locale, 'short'),
            },
            { term: `Without ${facts.seller.taxName}`, text: money(facts.net) },
            { term: facts.seller.taxName, text: money(facts.tax) },
            { term: 'Rounding', text: facts.rounding === 0 ? null : money(facts.rounding) },
            { term: isCredit ? 'Taken off' : 'Total', text: money(facts.payable) },
            { term: 'Paid before it was issued', text: paper.prepaid === 0 ? null : money(paper.prepaid) },
          ]}
        />
        <DocketSection heading="Papers">
          <p>
            <LinkButton href={`${here}/invoice.pdf`} kind="second" file>
              {`${word} (PDF)`}
            </LinkButton>
          </p>
          {problems.length === 0 ? (
            <p>
              <LinkButton href={`${here}/invoice.xml`} kind="quiet" file>
                Structured form (UBL, EN 16931)
              </LinkButton>
            </p>
          ) : (
            <p>
              {`The structured form of EN 16931 is not to be had for this one. ${problems.map((problem) => UBL_PROBLEM_SENTENCES[problem]).join(' ')}`}
            </p>
          )}
          {may(who.role, 'money') ? (
            <p>
              <TextLink href={`/workshop/money/statement/${job.number}`}>Statement of this customer</TextLink>
            </p>
          ) : null}
        </DocketSection>
      </Docket>
      <InvoiceLines whole={whole} locale={locale} />
      {credits.length > 0 ? (
        <section aria-labelledby="credits">
          <h2 id="credits">Credit notes on it</h2>
          <ul className="plain-list">
            {credits.map((credit) => (
              <li key={credit.number}>
                <TextLink href={`/workshop/money/invoices/${credit.number}`}>{credit.number}</TextLink>
                {`: ${money(credit.payable)}, ${formatDay(credit.issuedOn, locale, 'short')}. ${credit.reason}`}
              </li>
            ))}
          </ul>
        </section>
      ) : null}
      {left && left.payable > 0 && may(who.role, 'money') ? (
        <CreditForm whole={whole} left={left} locale={locale} />
      ) : null}
    </>
  );
}

function nextOf(
  state: 'open' | 'paid' | 'credited',
  o: { owed: number; money: (minor: number) => string },
): string {
  if (o.owed < 0) return `Give ${o.money(-o.owed)} back, and record it on the job sheet with a minus sign.`;
  if (state === 'open')
    return `${o.money(o.owed)} is left to pay. Record it on the job sheet when it is here.`;
  return 'Nothing. Neither side owes anything.';
}
