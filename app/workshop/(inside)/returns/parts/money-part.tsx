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
      <p className="max-w-[42rem]">{yearWords(figures, workshop)}</p>
      <Repairs heading="Repairs that lose money" rows={losing} workshop={workshop} />
      <Repairs heading="Repairs that may lose money" rows={doubtful} workshop={workshop} />
      <Repairs
        heading="Repairs that cost more than they bring, warranty aside"
        rows={belowCost}
        workshop={workshop}
      />
      {together ? <p className="mt-4 max-w-[42rem]">{together}</p> : null}
      {tooFew > 0 ? (
        <p className="mt-4 max-w-[42rem] text-sm">
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

/** What was spent on all, and what was reserved for those that were watched enough to say. */
function yearWords(figures: readonly RepairFigure[], { currency, locale }: WorkshopCard): string {
  const money = (minor: number) => formatMoney(minor, currency, locale);
  const known = figures.flatMap(({ year, worth }) =>
    year.against && worth.carries !== 'too-few' ? [year.against] : [],
  );
  const spent = figures.reduce((sum, { year }) => sum + year.spentMinor, 0);
  const sent = figures.reduce((sum, { year }) => sum + year.sent, 0);
  const uncosted = figures.reduce((sum, { year }) => sum + year.uncosted, 0);
  const reserve = known.reduce((sum, year) => sum + year.reserveMinor, 0);
  const upper = known.reduce((sum, year) => sum + year.upperMinor, 0);
  return [
    `In the last year ${units(sent)} sent back and ${money(spent)} went on claims ruled covered.`,
    known.length > 0
      ? `Of ${known.length === 1 ? 'the one repair' : `the ${known.length} repairs`} that were watched enough, ${units(known.reduce((sum, year) => sum + year.sent, 0))} sent back with a reserve of ${money(reserve)}, ${money(upper)} at most; their claims cost ${money(known.reduce((sum, year) => sum + year.spentMinor, 0))}.`
      : '',
    uncosted > 0
      ? `${uncosted === 1 ? 'One claim has' : `${uncosted} claims have`} no recorded cost yet, so what was spent may still rise.`
      : '',
  ]
    .filter(Boolean)
    .join(' ');
}

function units(count: number): string {
  return count === 1 ? '1 unit was' : `${count} units were`;
}
