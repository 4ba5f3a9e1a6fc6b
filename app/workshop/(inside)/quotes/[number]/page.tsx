import type { Metadata } from 'next';
import { Docket, DocketSection } from '@/app/ui/docket/docket';
import { Facts } from '@/app/ui/docket/facts';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { TextLink } from '@/app/ui/page/text-link';
import { PhotoStrip } from '@/app/ui/photos/photo';
import { NumberText } from '@/app/ui/words/number-text';
import { QuoteStateTag } from '@/app/ui/words/quote-state-tag';
import { dayFromDate, dayInZone } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';
import { unitName } from '@/lib/catalogue/rules/unit-name';
import { now } from '@/lib/clock';
import { config } from '@/lib/config';
import { readMessages } from '@/lib/jobs/read-messages';
import { HISTORY } from '@/lib/jobs/rules/booking';
import { noteSeen } from '@/lib/keeping/seen';
import { troubledMail } from '@/lib/mail/records';
import { showNumber, showTyped } from '@/lib/numbers/job-number';
import { openRevision, type QuoteRecord } from '@/lib/quotes/records';
import { MailTrouble } from '../../mail-trouble';
import { HistoryPart, MessagesPart } from './messages-part';
import { NextPart } from './next-part';
import { openQuote } from './open-quote';
import { PricesPart } from './prices-part';
import { quotePhotos } from './quote-photos';
import { quoteStamps } from './quote-stamps';

type Props = { params: Promise<{ number: string }>; searchParams: Promise<{ saved?: string }> };

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  return { title: `Quote ${showTyped((await params).number)}` };
}

/** One request for a price: what was asked, what can be done next, and every price that was sent. */
export default async function QuotePage({ params, searchParams }: Props) {
  const { number } = await params;
  const { saved } = await searchParams;
  const { quote, workshop, staff, who } = await openQuote(number, 'take-in');
  const { request } = quote;
  const { locale, timeZone } = workshop;
  const parts = { quote, workshop, staff };
  const held = openRevision(quote);
  await noteOpened(quote, who.id);
  return (
    <>
      <PageHead
        above={<TextLink href="/workshop/quotes">Quotes</TextLink>}
        title={request.device}
        lead={<span className="written">{request.problem}</span>}
      />
      {saved ? (
        <Notice kind="good" role="status">
          <p>{SAVED[saved] ?? 'Sent.'}</p>
        </Notice>
      ) : null}
      <MailTrouble
        mails={await troubledMail({ quoteId: quote.id })}
        role={who.role}
        phone={request.phone}
        number={quote.job?.number ?? quote.number}
      />
      <Docket
        kind="Quote"
        number={showNumber(quote.number)}
        heading="What was asked"
        tag={<QuoteStateTag state={request.state} />}
        qr={{
          text: `${config.appUrl}/workshop/quotes/${quote.number}`,
          alt: 'QR code that opens this quote',
        }}
        stubFacts={[
          { term: 'Asked', text: formatDay(dayInZone(request.askedAt, timeZone), locale, 'short') },
          {
            term: 'Held until',
            text: held ? formatDay(dayFromDate(held.validUntil), locale, 'short') : 'no price waits',
          },
        ]}
        stamps={quoteStamps(quote, { locale, timeZone })}
      >
        <DocketSection heading="Next">
          <NextPart quote={quote} workshop={workshop} who={who} />
        </DocketSection>
        <DocketSection heading="Unit">
          <Facts
            items={[
              {
                term: 'Model',
                text: request.model ? (
                  <TextLink href={`/workshop/catalogue/models/${request.model.id}`}>
                    {unitName(request.model)}
                  </TextLink>
                ) : (
                  'not in the catalogue'
                ),
              },
              {
                term: 'Serial',
                text: request.serialTyped ? <NumberText text={request.serialTyped} /> : 'not told',
              },
              { term: 'Symptoms', text: request.symptoms.join('. ') },
              {
                term: 'History told',
                text: request.history
                  .map((key) => (key in HISTORY ? HISTORY[key as keyof typeof HISTORY] : key))
                  .join('. '),
              },
              {
                term: 'Priced as',
                text: request.repair ? (
                  <TextLink href={`/workshop/catalogue/repairs/${request.repair.id}`}>
                    {`${request.repair.name}, ${unitName(request.repair.model)}`}
                  </TextLink>
                ) : null,
              },
            ]}
          />
        </DocketSection>
        <DocketSection heading="Customer">
          <Facts
            items={[
              { term: 'Name', text: request.name },
              { term: 'E-mail', text: <a href={`mailto:${request.email}`}>{request.email}</a> },
              { term: 'Telephone', text: request.phone },
            ]}
          />
          {request.email === '' ? null : (
            <p id="contact">
              <TextLink href={`/workshop/customers/${quote.job?.number ?? quote.number}/contact`}>
                Correct the contact
              </TextLink>
            </p>
          )}
        </DocketSection>
      </Docket>
      <div className="sheet-parts">
        <div>
          {quote.photos.length > 0 ? (
            <section id="photos" aria-labelledby="photos-head">
              <h2 id="photos-head">Photos</h2>
              <PhotoStrip label="Photos the customer sent" photos={quotePhotos(quote)} />
            </section>
          ) : null}
          <PricesPart {...parts} />
        </div>
        <div>
          <MessagesPart {...parts} />
          <HistoryPart {...parts} />
        </div>
      </div>
    </>
  );
}

const SAVED: Record<string, string> = {
  prices: 'The price is on its way to the customer.',
  contact: 'The contact was put right. Send letters that came back again.',
};

/** Who opens a request has seen whose it is, and has read what the customer wrote. */
async function noteOpened(quote: QuoteRecord, userId: string): Promise<void> {
  const at = now();
  await readMessages({ about: { quoteId: quote.id }, reader: 'staff', now: at });
  const { email } = quote.request;
  if (email !== '') await noteSeen({ userId, what: 'opened', email, quoteId: quote.id, now: at });
}
