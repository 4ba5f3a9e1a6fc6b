import type { Metadata } from 'next';
import { nothingHere } from '@/app/nothing-here';
import { isUnread, readByCustomer } from '@/app/read-by-customer';
import { readWorkshop } from '@/app/read-workshop';
import { Docket } from '@/app/ui/docket/docket';
import { Facts } from '@/app/ui/docket/facts';
import { LinkButton } from '@/app/ui/page/button';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { Timeline } from '@/app/ui/page/timeline';
import { PhotoStrip } from '@/app/ui/photos/photo';
import { MailAddress } from '@/app/ui/words/mail-address';
import { NumberText } from '@/app/ui/words/number-text';
import { QuoteStateTag } from '@/app/ui/words/quote-state-tag';
import { dayFromDate, dayInZone } from '@/lib/calendar/day';
import { formatDay, formatInstant } from '@/lib/calendar/format';
import { workingDaysWords } from '@/lib/calendar/working';
import { now } from '@/lib/clock';
import { newestTokenOf, quoteAddress } from '@/lib/jobs/private-link';
import { historyWords } from '@/lib/jobs/rules/booking';
import { ifMailed } from '@/lib/mail/mail-server';
import { formatMoney } from '@/lib/money/amount';
import { showNumber } from '@/lib/numbers/job-number';
import { shownRevision } from '@/lib/quotes/quote-data';
import { heldNoOf } from '@/lib/quotes/records';
import { isHeld } from '@/lib/quotes/rules/held-price';
import { isInspectionOnly } from '@/lib/quotes/rules/inspection-fee';
import { type QuoteDone, stillDoneOnQuote } from '@/lib/quotes/rules/just-done';
import { quoteEventLine } from '@/lib/quotes/rules/quote-events';
import { nextForAsker } from '@/lib/quotes/rules/request-next';
import { requestRun } from '@/lib/quotes/rules/request-run';
import { customerWords } from '@/lib/quotes/rules/request-states';
import type { WorkshopCard } from '@/lib/workshop/card';
import { AfterNoPart, AnswerPart, BookPart } from './answer-part';
import { quoteOfToken } from './open-quote';
import type { PartProps } from './part-props';
import { PricePart } from './price-part';
import { MessagesPart, QuestionPart, TurnedDownPart } from './write-part';

export const metadata: Metadata = { title: 'Your quote', robots: { index: false, follow: false } };

const doneWords = (answerWithin: string): Record<QuoteDone, string> => ({
  asked: `We have your request. Keep this page: its address is your private link, ${ifMailed('and we have mailed it to you', 'and we send no mail yet, so write it down or save it')}.`,
  answered: `Thank you. It is here, and we answer within ${answerWithin}.`,
  accepted: `Thank you. The price is agreed${ifMailed(', and we have sent you a mail that says so')}.`,
  declined: 'Thank you for telling us. Nothing is booked and nothing is owed.',
});

type Props = { params: Promise<{ token: string }>; searchParams: Promise<{ done?: string | string[] }> };

export default async function QuotePage({ params, searchParams }: Props) {
  const { token } = await params;
  const { done } = await searchParams;
  const quote = await quoteOfToken(token);
  if (!quote) nothingHere();
  if (isUnread(quote.messages)) await readByCustomer({ quoteId: quote.id });
  const workshop = await readWorkshop();
  const { locale, timeZone } = workshop;
  const answerWithin = workingDaysWords(workshop.answerDays);
  const { request } = quote;
  const shown = shownRevision(quote);
  const until = shown ? dayFromDate(shown.validUntil) : null;
  // Past its day a price cannot be agreed to, even before the clock's next round says that it lapsed.
  const isLate = request.state === 'quoted' && until !== null && !isHeld(until, dayInZone(now(), timeZone));
  const state = isLate ? 'lapsed' : request.state;
  const hasLastWord = quote.messages.at(-1)?.author === 'customer';
  const justDone = stillDoneOnQuote(done, { state, hasLastWord });
  const jobToken = quote.job ? await newestTokenOf(quote.job.id) : null;
  const isInspection = shown !== null && isInspectionOnly(shown);
  const isCancelled = state === 'booked' && quote.job?.stage === 'cancelled';
  const declined = heldNoOf(quote, dayInZone(now(), timeZone));
  const parts: PartProps = { quote, token, workshop };
  return (
    <>
      <PageHead
        title={customerWords(state, { hasPrice: shown !== null, isCancelled, isInspection })}
        lead={request.device}
        next={nextForAsker({
          state,
          price: shown ? formatMoney(shown.grossMinor, quote.currency, locale) : null,
          until: until ? formatDay(until, locale, 'weekday') : null,
          answerWithin,
          isInspection,
          isCancelled,
        })}
      >
        {isCancelled ? <LinkButton href="/quote/ask">Ask for a price again</LinkButton> : null}
        {jobToken ? (
          <LinkButton href={`/job/${jobToken}`} kind={isCancelled ? 'second' : 'main'}>
            {isCancelled ? 'To the cancelled booking' : 'To your repair'}
          </LinkButton>
        ) : null}
      </PageHead>
      {justDone ? (
        <Notice kind="good" role="status">
          <p>{doneWords(answerWithin)[justDone]}</p>
        </Notice>
      ) : null}
      {state === 'turned-down' ? <TurnedDownPart {...parts} /> : null}
      {state === 'questioned' ? <QuestionPart {...parts} /> : null}
      {state === 'accepted' ? <BookPart {...parts} /> : null}
      {shown ? (
        <PricePart {...parts} revision={shown} heading={PRICE_HEADINGS[state] ?? 'The price'} />
      ) : null}
      {declined ? <AfterNoPart {...parts} declined={declined} /> : null}
      {state === 'quoted' && shown?.state === 'sent' ? <AnswerPart {...parts} offer={shown} /> : null}
      <Docket
        kind="Quote"
        number={showNumber(quote.number)}
        heading={request.device}
        tag={<QuoteStateTag state={state} isCancelled={isCancelled} />}
        qr={{ text: quoteAddress(token), alt: 'QR code that opens this quote. Show it to nobody else.' }}
        stubFacts={[
          { term: 'Asked', text: formatDay(dayInZone(request.askedAt, timeZone), locale, 'short') },
          { term: 'Held until', text: until ? formatDay(until, locale, 'weekday') : null },
        ]}
        stamps={requestRun(state, quote.events).map(({ at, ...step }) => ({
          ...step,
          on: at ? formatDay(dayInZone(at, timeZone), locale, 'short') : undefined,
        }))}
      >
        <Facts
          items={[
            {
              term: 'Serial',
              text: request.serialTyped === '' ? 'not told yet' : <NumberText text={request.serialTyped} />,
            },
            { term: 'What it does', text: request.symptoms.join('. ') },
            { term: 'In your words', text: <span className="written">{request.problem}</span> },
            { term: 'What happened to it', text: historyWords(request.history) },
            { term: 'Answers go to', text: request.email && <MailAddress text={request.email} /> },
          ]}
        />
      </Docket>
      <section aria-labelledby="photos" hidden={quote.photos.length === 0}>
        <h2 id="photos">Your photos</h2>
        <PhotoStrip
          label="Your photos"
          photos={quote.photos.map((photo, index) => ({
            src: `/quote/${token}/photo/${photo.id}?size=thumb`,
            full: `/quote/${token}/photo/${photo.id}`,
            alt: photo.caption || `Your photo, picture ${index + 1}`,
            width: photo.width,
            height: photo.height,
          }))}
        />
      </section>
      <MessagesPart {...parts} />
      <History {...parts} />
    </>
  );
}

const PRICE_HEADINGS: Record<string, string> = {
  quoted: 'Our price',
  accepted: 'The price you agreed to',
  booked: 'The price you agreed to',
  declined: 'The price you declined',
  lapsed: 'The price that lapsed',
  'turned-down': 'The price that was closed',
};

function History({ quote, workshop }: { quote: PartProps['quote']; workshop: WorkshopCard }) {
  return (
    <section aria-labelledby="history">
      <h2 id="history">What happened so far</h2>
      <Timeline
        label="What happened so far"
        entries={quote.events.map((event) => ({
          key: event.id,
          dateTime: event.at.toISOString(),
          on: formatInstant(event.at, { locale: workshop.locale, zone: workshop.timeZone }),
          who: event.actorKind === 'customer' ? 'You' : workshop.name,
          what: quoteEventLine(event.kind, event.data, 'customer'),
        }))}
      />
    </section>
  );
}
