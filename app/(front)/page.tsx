import type { ReactNode } from 'react';
import { readWorkshop } from '@/app/read-workshop';
import { EmptyState } from '@/app/ui/page/empty-state';
import { NumberForm } from '@/app/ui/page/number-form';
import { PageHead } from '@/app/ui/page/page-head';
import { SearchBox } from '@/app/ui/page/search-box';
import { TextLink } from '@/app/ui/page/text-link';
import { workingDaysWords } from '@/lib/calendar/working';
import { type PricedKind, readPricedKinds } from '@/lib/catalogue/price-kinds';
import { formatMoney } from '@/lib/money/amount';
import { ClosureNotice } from './closure-notice';
import { NoBookings } from './no-bookings';

export default async function HomePage() {
  const workshop = await readWorkshop();
  const kinds = await readPricedKinds(workshop.pricesIncludeTax);
  const repairs = kinds.reduce((sum, kind) => sum + kind.repairs, 0);
  const money = (minor: number) => formatMoney(minor, workshop.currency, workshop.locale);
  return (
    <>
      <PageHead
        title="Send it in. Get it back mended, with a warranty in writing."
        lead={`${workshop.name} repairs electronics that come by post. The price is known before you book, and what we mend is covered by a certificate.`}
      />
      <NoBookings workshop={workshop} />
      <ClosureNotice workshop={workshop} />
      <article aria-labelledby="find" className="docket">
        <div className="docket-top">
          <div className="docket-stub">
            <span className="docket-eyelet" aria-hidden="true" />
            <p className="docket-kind">Price list</p>
            {repairs === 0 ? (
              <p className="text-small">being written</p>
            ) : (
              <>
                <p className="docket-number">
                  <span className="number-text number-large">{repairs}</span>
                </p>
                <p className="text-small">{repairs === 1 ? 'repair' : 'repairs'} with a fixed price</p>
              </>
            )}
          </div>
          <div className="docket-body">
            <h2 id="find" className="mb-2">
              What shall we mend?
            </h2>
            {repairs === 0 ? null : (
              <SearchBox
                action="/prices"
                label="Maker, model or what is wrong"
                hint="For instance: recorder does not charge"
                button="Find"
              />
            )}
            <Kinds kinds={kinds} money={money} />
            <p className="mt-4">
              {repairs === 0 ? null : 'Not on the list? '}
              <TextLink href="/quote/ask" className="inline-block py-2.5">
                Ask for a price
              </TextLink>
              . It costs nothing, and we answer within {workingDaysWords(workshop.answerDays)}.
            </p>
          </div>
        </div>
      </article>
      <div className="mt-8 grid gap-8 md:grid-cols-2">
        <Errand id="where" title="Where is my repair?" text="See at which stage your unit is.">
          <NumberForm
            action="/track"
            name="number"
            label="Job number"
            hint="On your packing slip and in our e-mail. It starts with J."
            value=""
            problem={null}
            submit="Show the stage"
          />
        </Errand>
        <Errand
          id="again"
          title="Has it failed again?"
          text="We want to know. See what your certificate covers and open a claim: it is free and takes two minutes."
        >
          <p className="py-2">
            <TextLink href="/certificate" className="button button-second">
              Check a certificate or open a claim
            </TextLink>
          </p>
          <p>Or scan the code on the certificate with your phone.</p>
        </Errand>
      </div>
      <section aria-labelledby="how" className="mt-12">
        <h2 id="how">How it works, and what it costs</h2>
        <ol className="mt-4 border-t border-edge">
          {steps(money, workshop).map((step, i) => (
            <li
              key={step.title}
              className="grid grid-cols-[2.5rem_1fr] gap-x-4 gap-y-1 border-b border-rule py-4 md:grid-cols-[2.5rem_1fr_18rem]"
            >
              <span className="number-text text-head" aria-hidden="true">
                {i + 1}
              </span>
              <div>
                <h3>{step.title}</h3>
                <p>{step.text}</p>
              </div>
              <p className="col-start-2 md:col-start-3">
                <strong>Costs:</strong> {step.cost}
              </p>
            </li>
          ))}
        </ol>
      </section>
    </>
  );
}

function Kinds({ kinds, money }: { kinds: readonly PricedKind[]; money: (minor: number) => string }) {
  if (kinds.length === 0) {
    return (
      <EmptyState>
        The price list is being written. Ask for a price, and we tell you what we can do.
      </EmptyState>
    );
  }
  return (
    <ul className="mt-4 border-t border-rule">
      {kinds.map(({ slug, name, fromMinor }) => (
        <li key={slug} className="flex items-baseline justify-between gap-4 border-b border-rule">
          <TextLink href={`/prices?family=${slug}`} className="inline-block py-2.5">
            {name}
          </TextLink>
          <span className="whitespace-nowrap text-small text-soft">from {money(fromMinor)}</span>
        </li>
      ))}
    </ul>
  );
}

function Errand(props: { id: string; title: string; text: string; children: ReactNode }) {
  return (
    <section aria-labelledby={props.id} className="border-t-4 border-dotted border-edge pt-4">
      <h2 id={props.id}>{props.title}</h2>
      <p className="mb-3">{props.text}</p>
      {props.children}
    </section>
  );
}

function steps(
  money: (minor: number) => string,
  workshop: { returnFeeMinor: number; inspectionFeeMinor: number },
) {
  const back = workshop.returnFeeMinor > 0 ? `for ${money(workshop.returnFeeMinor)}` : 'free of charge';
  return [
    {
      title: 'Book it here',
      text: 'Pick the repair, tell us what is wrong and where to send it back. No account is needed.',
      cost: 'nothing. You can cancel free of charge until your unit arrives.',
    },
    {
      title: 'Post it',
      text: 'You get a packing slip that says what to put in, what to keep at home and how to pack it.',
      cost: 'the postage to us. The way back is in the price.',
    },
    {
      title: 'We mend it and prove it',
      text: 'If we find more than you booked, we show you what and ask. Nothing goes on without your yes.',
      cost: `the price on the list. If you say no to a changed price, the unit comes back ${back}.`,
    },
    {
      title: 'It comes back with a certificate',
      text: 'The certificate says what is covered and until when, and holds the readings that prove the repair.',
      cost: 'nothing more. If the repair fails in its term, we put it right for free.',
    },
  ];
}
