import { type Fact, Facts } from '@/app/ui/docket/facts';
import { Notice } from '@/app/ui/page/notice';
import { TextLink } from '@/app/ui/page/text-link';
import { formatMoney } from '@/lib/money/amount';
import type { RepairFigure } from '@/lib/returns/repair-figures';
import { carriesSentence } from '@/lib/returns/rules/carries-words';
import { TOLD_FROM, worthSentence } from '@/lib/returns/rules/repair-worth-words';
import type { WorkshopCard } from '@/lib/workshop/card';

type MoneyPartProps = { figures: readonly RepairFigure[]; workshop: WorkshopCard };

/** For the owner: which repairs their warranty costs more than they leave, and the year's reserve against what was spent. */
export function MoneyPart({ figures, workshop }: MoneyPartProps) {
  const losing = figures.filter(({ worth }) => worth.carries === 'no');
  const doubtful = figures.filter(({ worth }) => worth.carries === 'in-doubt');
  const belowCost = figures.filter(({ worth }) => worth.carries === 'below-cost');
  const together = carriesSentence(figures.map(({ worth }) => worth.carries));
  const tooFew = figures.filter(({ worth }) => worth.carries === 'too-few').length;
  return (
    <section aria-labelledby="money">
      <h2 id="money">What warranty costs</h2>
      {workshop.labourRateMinor === 0 ? (
        <Notice kind="warn" heading="The cost of an hour is missing">
          <p>
            Bench time counts as nothing until you tell{' '}
            <TextLink href="/workshop/settings/money">what an hour at the bench costs you</TextLink>.
          </p>
        </Notice>
      ) : null}
      <Facts items={yearFacts(figures, workshop)} />
      <Repairs heading="Repairs that lose money" rows={losing} workshop={workshop} />
      <Repairs heading="Repairs that may lose money" rows={doubtful} workshop={workshop} />
      <Repairs
        heading="Repairs that cost more than they bring, warranty aside"
        rows={belowCost}
        workshop={workshop}
      />
      {together ? <p className="mt-4 max-w-[42rem]">{together}</p> : null}
      {tooFew > 0 ? (
        <p className="mt-4 max-w-[42rem] text-small">
          {`Of ${tooFew === 1 ? 'one repair' : `${tooFew} repairs`} too few units were watched long enough to say; it is told ${TOLD_FROM}.`}
        </p>
      ) : null}
    </section>
  );
}

type RepairsProps = { heading: string; rows: readonly RepairFigure[]; workshop: WorkshopCard };

function Repairs({ heading, rows, workshop }: RepairsProps) {
  const { currency, locale } = workshop;
  if (rows.length === 0) return null;
  return (
    <>
      <h3>{heading}</h3>
      <ul className="mt-2 grid max-w-[42rem] gap-4">
        {rows.map(({ terms, worth, addMinor }) => (
          <li key={terms.id}>
            <TextLink
              href={`/workshop/returns/repairs/${terms.id}`}
            >{`${terms.name}, ${terms.model}`}</TextLink>
            <p>
              {`${worthSentence(worth, { currency, locale })}${addMinor ? ` Add ${formatMoney(addMinor, currency, locale)} to its price without tax to carry the upper figure.` : ''}`}
            </p>
          </li>
        ))}
      </ul>
    </>
  );
}

/**
 * What was spent on all, and what was reserved for those that were watched enough to say; of these also the units whose cover
 * ended, whose own claims can be held against their reserve.
 */
function yearFacts(figures: readonly RepairFigure[], { currency, locale }: WorkshopCard): Fact[] {
  const money = (minor: number) => formatMoney(minor, currency, locale);
  const years = figures.map(({ year }) => year);
  const known = figures.flatMap(({ year, worth }) =>
    year.against && worth.carries !== 'too-few' ? [year.against] : [],
  );
  const ended = known.map((year) => year.ended);
  const endedUnits = sum(ended, 'units');
  const uncosted = sum(years, 'uncosted');
  const reserved = (rows: readonly Record<'reserveMinor' | 'upperMinor', number>[]) =>
    `${money(sum(rows, 'reserveMinor'))}, ${money(sum(rows, 'upperMinor'))} at most`;
  return [
    { term: 'Sent back in the last year', text: inUnits(sum(years, 'sent')) },
    {
      term: 'Spent on claims ruled covered',
      text: `${money(sum(years, 'spentMinor'))}, on these and on earlier units`,
    },
    {
      term:
        known.length === 1
          ? 'Of the one repair watched enough'
          : `Of the ${known.length} repairs watched enough`,
      text:
        known.length === 0
          ? null
          : `${inUnits(sum(known, 'sent'))} sent back with a reserve of ${reserved(known)}; ${money(sum(known, 'spentMinor'))} went on claims opened in the year`,
    },
    {
      term: 'Cover as long as the term ended',
      text:
        endedUnits === 0
          ? null
          : `for ${endedUnits === 1 ? '1 of their units' : `${endedUnits} of their units`}: reserved ${reserved(ended)}; spent on their own claims ${money(sum(ended, 'spentMinor'))}`,
    },
    {
      term: 'No cost recorded yet',
      text:
        uncosted === 0
          ? null
          : `${uncosted === 1 ? '1 claim' : `${uncosted} claims`}, so what was spent may still rise`,
    },
  ];
}

function sum<Key extends string>(rows: readonly Record<Key, number>[], key: Key): number {
  return rows.reduce((all, row) => all + row[key], 0);
}

function inUnits(count: number): string {
  return count === 1 ? '1 unit' : `${count} units`;
}
