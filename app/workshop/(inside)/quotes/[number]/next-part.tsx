import { ActionForm } from '@/app/ui/forms/action-form';
import { ConfirmButton } from '@/app/ui/forms/confirm-button';
import { SubmitButton } from '@/app/ui/forms/submit';
import { TextArea } from '@/app/ui/forms/text-area';
import { LinkButton } from '@/app/ui/page/button';
import { TextLink } from '@/app/ui/page/text-link';
import type { Staff } from '@/app/workshop/who';
import { dayFromDate } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';
import { showNumber } from '@/lib/numbers/job-number';
import { may } from '@/lib/people/rules/roles';
import { openRevision } from '@/lib/quotes/records';
import { movesFrom } from '@/lib/quotes/rules/request-states';
import { askQuestion, turnDownRequest } from './actions';
import type { QuotePartProps } from './open-quote';

/** What can be done next with a quote, each with its consequence; or whom it waits on. */
export function NextPart({
  quote,
  workshop,
  who,
}: Pick<QuotePartProps, 'quote' | 'workshop'> & { who: Staff }) {
  const moves = movesFrom(quote.request.state, 'staff');
  const find = (key: string) => moves.find((move) => move.key === key);
  const [send, ask, turnDown] = [find('send-quote'), find('ask-question'), find('turn-down')];
  const hasPrice = quote.request.state === 'quoted' || quote.request.state === 'accepted';
  const mayPrice = may(who.role, 'money');
  return (
    <div className="moves">
      <WaitsFor quote={quote} workshop={workshop} />
      {send && mayPrice ? (
        <p>
          <LinkButton
            href={`/workshop/quotes/${quote.number}/price`}
            kind={quote.request.state === 'quoted' ? 'second' : 'main'}
          >
            {quote.revisions.length === 0 ? 'Write the quote' : 'Write a new price'}
          </LinkButton>
        </p>
      ) : null}
      {send && !mayPrice ? <p>The front desk or the owner sends the price.</p> : null}
      {ask ? (
        <ActionForm
          action={askQuestion.bind(null, quote.number)}
          hidden={{ version: quote.version }}
          label={ask.label}
          summary={ask.label}
          isOpen={quote.request.state === 'asked'}
        >
          <TextArea name="text" label="Your question" rows={3} maxLength={4000} />
          <SubmitButton label="Send the question" kind="second" consequence={ask.consequence} />
        </ActionForm>
      ) : null}
      {turnDown && mayPrice ? (
        <ActionForm
          action={turnDownRequest.bind(null, quote.number)}
          hidden={{ version: quote.version }}
          label={turnDown.label}
        >
          <ConfirmButton
            label={turnDown.label}
            question="Tell the customer that this is closed?"
            confirm="Yes, turn it down"
            consequence={turnDown.consequence}
          >
            {hasPrice ? (
              <p>
                A price is a promise while it is held or agreed to. Close it when the customer asks for that,
                or when the repair has become impossible.
              </p>
            ) : null}
            <TextArea
              name="text"
              label="Why"
              hint="The customer reads this. Say what they can do instead."
              rows={3}
              maxLength={2000}
            />
          </ConfirmButton>
        </ActionForm>
      ) : null}
    </div>
  );
}

function WaitsFor({ quote, workshop }: Pick<QuotePartProps, 'quote' | 'workshop'>) {
  const open = openRevision(quote);
  switch (quote.request.state) {
    case 'asked':
      return <p>It waits on us: a price, a question, or a no with its reason.</p>;
    case 'questioned':
      return <p>It waits for the customer’s answer. A price can be sent before it comes.</p>;
    case 'quoted':
      return (
        <p>
          {open
            ? `It waits for the customer’s yes or no until ${formatDay(dayFromDate(open.validUntil), workshop.locale, 'weekday')}.`
            : 'It waits for the customer’s yes or no.'}
        </p>
      );
    case 'accepted':
      return (
        <p>
          The customer said yes and has not booked yet. The private page leads to the booking. One who will
          not book is turned down below.
        </p>
      );
    case 'booked':
      return quote.job ? (
        <p>
          {'Booked as job '}
          <TextLink href={`/workshop/jobs/${quote.job.number}`}>{showNumber(quote.job.number)}</TextLink>
          {quote.job.stage === 'cancelled'
            ? ', which was cancelled. The price ended with it; the customer is told to ask again.'
            : '.'}
        </p>
      ) : null;
    case 'declined':
      return (
        <p>
          The customer said no. While the price is held they can still say yes; you can send a new one too.
        </p>
      );
    case 'lapsed':
      return <p>The price was not answered in time. A new one can be sent.</p>;
    case 'turned-down':
      return <p>We turned it down. Nothing is left to do.</p>;
  }
}
