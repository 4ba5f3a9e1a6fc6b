import type { Metadata } from 'next';
import { cache } from 'react';
import { nothingHere } from '@/app/nothing-here';
import { readWorkshop } from '@/app/read-workshop';
import { Facts } from '@/app/ui/docket/facts';
import { LinkButton } from '@/app/ui/page/button';
import { EmptyState } from '@/app/ui/page/empty-state';
import { PageHead } from '@/app/ui/page/page-head';
import { TextLink } from '@/app/ui/page/text-link';
import { workingDaysWords } from '@/lib/calendar/working';
import type { ListedRepair } from '@/lib/catalogue/price-list';
import { type ModelPage, readModelPage } from '@/lib/catalogue/records';
import { coverWords } from '@/lib/catalogue/rules/cover-words';
import { sizeWords } from '@/lib/catalogue/rules/size';
import { unitName } from '@/lib/catalogue/rules/unit-name';
import { now } from '@/lib/clock';
import { config } from '@/lib/config';
import { formatMoney } from '@/lib/money/amount';
import { promisesToday } from '@/lib/promise/promises-today';
import { readAim } from '@/lib/promise/rules/aim';
import { keptWords, promiseWords } from '@/lib/promise/rules/promise-words';
import { keptPromises } from '@/lib/promise/stored-kept';
import { takesBookings } from '@/lib/workshop/rules/missing-settings';
import { NoBookings } from '../../no-bookings';
import { CostNotes } from '../cost-notes';
import { JsonLd } from '../json-ld';
import { serviceOf } from '../offers';
import { BatteryNote } from './battery-note';

const readOnce = cache((slug: string) => readModelPage(slug));

type Props = { params: Promise<{ model: string }> };

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const model = await readOnce((await params).model);
  return model ? { title: `${unitName(model)}: repairs and prices` } : {};
}

export default async function ModelPricesPage({ params }: Props) {
  const model = await readOnce((await params).model);
  if (!model) nothingHere();
  const workshop = await readWorkshop();
  const isOpen = takesBookings(workshop);
  const money = (minor: number) => formatMoney(minor, workshop.currency, workshop.locale);
  const at = now();
  const promises = await promisesToday(
    model.repairs.map(({ id }) => id),
    at,
  );
  const kept = keptWords(await keptPromises(at, workshop));
  const told = { locale: workshop.locale, aim: readAim(workshop.promiseAim) };
  const promiseOf = (id: string) => {
    const answer = promises.get(id);
    return answer ? promiseWords(answer, told) : null;
  };
  return (
    <>
      <PageHead
        above={
          <>
            <TextLink href="/prices">Prices</TextLink> /{' '}
            <TextLink href={`/prices#${model.family.slug}`}>{model.family.name}</TextLink>
          </>
        }
        title={unitName(model)}
        lead="What we mend on it. Every price is with tax, for the whole repair and the way back to you."
        next={isOpen ? 'choose a repair and book it. You pay nothing until it is done.' : null}
      />
      <NoBookings workshop={workshop} />
      {kept && model.repairs.length > 0 ? <p className="mb-6">{kept}</p> : null}
      {model.repairs.length === 0 ? (
        <EmptyState>
          There is no fixed price for this unit at the moment. Ask for one, and we tell you what we can do.
        </EmptyState>
      ) : (
        <ul className="grid gap-8">
          {model.repairs.map((repair) => (
            <RepairDocket
              key={repair.id}
              repair={repair}
              money={money}
              promise={promiseOf(repair.id)}
              isOpen={isOpen}
            />
          ))}
        </ul>
      )}
      <section aria-labelledby="not-listed" className="mt-10 max-w-text">
        <h2 id="not-listed">Is it something else?</h2>
        <p className="mb-3">
          Tell us what you see and send photos. We answer within {workingDaysWords(workshop.answerDays)}, and
          asking costs nothing.
        </p>
        <LinkButton href={`/quote/ask?model=${model.id}`} kind="second">
          Ask for a price for this unit
        </LinkButton>
      </section>
      <UnitFacts model={model} />
      <BatteryNote model={model} />
      <CostNotes workshop={workshop} />
      <JsonLd data={serviceOf(model, workshop, config.appUrl)} />
    </>
  );
}

type RepairProps = {
  repair: ListedRepair;
  money: (minor: number) => string;
  promise: string | null;
  isOpen: boolean;
};

function RepairDocket({ repair, money, promise, isOpen }: RepairProps) {
  return (
    <li id={repair.slug} className="docket scroll-mt-4">
      <div className="docket-top">
        <div className="docket-stub">
          <span className="docket-eyelet" aria-hidden="true" />
          <p className="docket-kind">Price with tax</p>
          <p className="docket-number">
            <span className="number-text number-large">{money(repair.grossMinor)}</span>
          </p>
        </div>
        <div className="docket-body">
          <h2>{repair.name}</h2>
          <p className="mb-3">{repair.summary}</p>
          <Facts
            items={[
              {
                term: 'Usual time',
                text: `${workingDaysWords(repair.workingDays)} from the day your unit is here`,
              },
              { term: 'Promise', text: promise },
              { term: 'Cover', text: coverWords(repair) },
              { term: 'It helps when', text: symptomText(repair.symptoms) },
            ]}
          />
          {isOpen ? (
            <p className="mt-4">
              {/* Not words hidden inside the link: browsers read a space before them, even before a colon. */}
              <TextLink
                href={`/book/start?repair=${repair.id}`}
                className="button button-main"
                aria-label={`Book this repair: ${repair.name}`}
              >
                Book this repair
              </TextLink>
            </p>
          ) : null}
        </div>
      </div>
    </li>
  );
}

/** What a customer can check the unit by, and needs to choose a box and a carrier. */
function UnitFacts({ model }: { model: ModelPage }) {
  const size = sizeWords(model);
  if (size === null && model.serialPlace === '') return null;
  return (
    <section aria-labelledby="unit" className="mt-10 max-w-text">
      <h2 id="unit" className="mb-2">
        The unit
      </h2>
      <Facts
        items={[
          { term: 'Size and weight', text: size && `${size}, without packing` },
          { term: 'Serial number', text: model.serialPlace },
        ]}
      />
    </section>
  );
}

function symptomText(symptoms: readonly string[]) {
  if (symptoms.length === 0) return null;
  return (
    <ul>
      {symptoms.map((symptom) => (
        <li key={symptom}>{symptom}</li>
      ))}
    </ul>
  );
}
