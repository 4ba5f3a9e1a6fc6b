import type { Metadata } from 'next';
import { readWorkshop } from '@/app/read-workshop';
import { LinkButton } from '@/app/ui/page/button';
import { EmptyState } from '@/app/ui/page/empty-state';
import { PageHead } from '@/app/ui/page/page-head';
import { Pager } from '@/app/ui/page/pager';
import { SearchBox } from '@/app/ui/page/search-box';
import { TextLink } from '@/app/ui/page/text-link';
import { workingDaysWords } from '@/lib/calendar/working';
import { readPricePage } from '@/lib/catalogue/price-list';
import { config } from '@/lib/config';
import { formatMoney } from '@/lib/money/amount';
import { takesBookings } from '@/lib/workshop/rules/missing-settings';
import { NoBookings } from '../no-bookings';
import { CostNotes } from './cost-notes';
import { addressOf, FamilyFilter } from './family-filter';
import { JsonLd } from './json-ld';
import { serviceOf } from './offers';
import { PriceLines } from './price-lines';

export const metadata: Metadata = {
  title: 'Prices',
  description: 'Every repair with its price, tax included, its usual time and its cover.',
};

type Search = { q?: string | string[]; family?: string | string[]; page?: string | string[] };
type Props = { searchParams: Promise<Search> };

export default async function PricesPage({ searchParams }: Props) {
  const { q, family: wanted, page: asked } = await searchParams;
  const typed = typeof q === 'string' ? q.slice(0, 120) : '';
  const workshop = await readWorkshop();
  const { kinds, chosen, found, families, page, pages } = await readPricePage({
    search: typed,
    kind: typeof wanted === 'string' ? wanted : undefined,
    page: Number(asked),
    pricesIncludeTax: workshop.pricesIncludeTax,
  });
  const money = (minor: number) => formatMoney(minor, workshop.currency, workshop.locale);
  const isEmpty = typed.trim() === '' && kinds.length === 0;
  const models = families.flatMap((family) => family.models);
  return (
    <>
      <PageHead
        title="Prices"
        lead={isEmpty ? undefined : 'Every price is with tax, for the whole repair and the way back to you.'}
        next={nextWords(isEmpty, takesBookings(workshop))}
      />
      <NoBookings workshop={workshop} />
      {isEmpty ? null : (
        <SearchBox
          action="/prices"
          label="Maker, model or what is wrong"
          hint="A word or two is enough; small typos do not matter."
          defaultValue={typed}
        />
      )}
      {typed.trim() === '' ? null : (
        <p className="mt-4" role="status">
          {found === 0 ? 'Nothing' : `${found} ${found === 1 ? 'repair' : 'repairs'}`} found for “
          {typed.trim()}”{chosen ? ` among ${chosen.name.toLowerCase()}` : ''}.{' '}
          <TextLink href="/prices">Show the whole list</TextLink>
        </p>
      )}
      <FamilyFilter kinds={kinds} chosen={chosen?.slug ?? null} typed={typed} />
      {families.length === 0 ? <NothingFound typed={typed} /> : null}
      <div>
        {families.map((family) => (
          <section key={family.id} aria-labelledby={family.slug} className="mt-10">
            <h2 id={family.slug} className="mb-4 border-b-2 border-ink pb-1">
              {family.name}
            </h2>
            <div className="gap-x-12 md:columns-2">
              {family.models.map((model) => (
                <PriceLines key={model.id} model={model} money={money} />
              ))}
            </div>
          </section>
        ))}
      </div>
      <Pager page={page} pages={pages} href={(other) => addressOf(chosen?.slug ?? null, typed, other)} />
      {families.length > 0 ? (
        <section aria-labelledby="not-listed" className="mt-10 max-w-text">
          <h2 id="not-listed">Not on the list?</h2>
          <p className="mb-3">
            Odd damage, or a device you do not see here: tell us what you see and send photos. We answer
            within {workingDaysWords(workshop.answerDays)}, and asking costs nothing.
          </p>
          <LinkButton href="/quote/ask" kind="second">
            Ask for a price
          </LinkButton>
        </section>
      ) : null}
      <CostNotes workshop={workshop} />
      <JsonLd data={{ '@graph': models.map((model) => serviceOf(model, workshop, config.appUrl)) }} />
    </>
  );
}

function nextWords(isEmpty: boolean, isOpen: boolean): string | null {
  if (isEmpty) return 'tell us what is wrong, and we name a price. Asking costs nothing.';
  return isOpen ? 'choose a repair and book it. You pay nothing until it is done.' : null;
}

function NothingFound({ typed }: { typed: string }) {
  const isSearch = typed.trim() !== '';
  return (
    <div className="mt-6">
      <EmptyState>
        {isSearch
          ? 'It is not on the list, which does not mean that it cannot be mended.'
          : 'The price list is being written.'}{' '}
        Tell us what it is and what is wrong, and we name a price or ask you something first. Asking costs
        nothing.
      </EmptyState>
      <p className="page-actions">
        <LinkButton href="/quote/ask">Ask for a price</LinkButton>
      </p>
    </div>
  );
}
