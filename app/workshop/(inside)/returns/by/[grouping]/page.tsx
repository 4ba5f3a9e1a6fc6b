import type { Metadata, Route } from 'next';
import { nothingHere } from '@/app/nothing-here';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { routeTo } from '@/app/ui/page/route-to';
import { TextLink } from '@/app/ui/page/text-link';
import { IntervalPlot } from '@/app/ui/plots/interval-plot';
import { requireStaff } from '@/app/workshop/who';
import { now } from '@/lib/clock';
import { coverClock } from '@/lib/returns/cover-clock';
import { type GroupFigure, readGroupFigures } from '@/lib/returns/group-figures';
import { GROUPINGS, type Grouping } from '@/lib/returns/groupings';
import { isFlagged, looksMade } from '@/lib/returns/rules/evidence';
import { EVIDENCE_WORD, evidenceSentence, thresholdSentence } from '@/lib/returns/rules/evidence-words';
import { readWorkshop } from '@/lib/workshop/records';
import { permissionFor } from '../../rows/narrowing';
import { GROUPING_WORDS } from '../grouping-words';

type Props = { params: Promise<{ grouping: string }> };

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const grouping = readGrouping((await params).grouping);
  return { title: grouping ? GROUPING_WORDS[grouping].title : 'Returns' };
}

/** How many are named where they are too young; more are counted. */
const NAMED = 5;

/** All of a grouping side by side, by name: nothing here is ranked. */
export default async function GroupingPage({ params }: Props) {
  const grouping = readGrouping((await params).grouping);
  await requireStaff(permissionFor(grouping));
  if (!grouping) nothingHere();
  const workshop = await readWorkshop();
  const { locale } = workshop;
  const words = GROUPING_WORDS[grouping];
  const figures = await readGroupFigures(grouping, coverClock(workshop, now()));
  const flagged = figures.filter(({ comparison }) => isFlagged(comparison));
  const comparisons = figures.map(({ comparison }) => comparison);
  const young = figures.filter(({ comparison }) => comparison.evidence === 'too-young');
  const isOfPeople = grouping === 'technician';
  return (
    <>
      <PageHead
        above={<TextLink href="/workshop/returns">Returns</TextLink>}
        title={words.title}
        lead={words.counted}
      />
      {isOfPeople ? <SmallNumbersLie /> : null}
      <IntervalPlot
        caption={words.title}
        head={words.one}
        rows={figures.map(({ id, name, tally, comparison }) => ({
          key: id,
          label: name,
          href: addressOf(grouping, id),
          count: { returned: tally.returned, units: tally.units },
          ...(isFlagged(comparison) ? { mark: EVIDENCE_WORD[comparison.evidence] } : {}),
        }))}
        centre={together(figures)}
        locale={locale}
        empty={words.empty}
      />
      {figures.length > 1 ? (
        <section aria-labelledby="evidence">
          <h2 id="evidence">What speaks against any of them</h2>
          {flagged.length === 0 ? (
            <p className="max-w-[42rem]">
              {figures.length === 1
                ? 'Nothing yet: there is no other to compare it with.'
                : `Nothing yet: none of the ${figures.length} comes back more often than the others beyond what chance does, over equal watches.`}
            </p>
          ) : (
            <ul className="grid max-w-[42rem] gap-4">
              {flagged.map(({ id, name, comparison }) => (
                <li key={id}>
                  <strong>{name}</strong>
                  <p>{evidenceSentence(comparison, locale)}</p>
                </li>
              ))}
            </ul>
          )}
          {young.length > 0 ? (
            <p className="mt-3 max-w-[42rem]">
              {`Too young to compare: ${young.length <= NAMED ? young.map(({ name }) => name).join('; ') : `${young.length} of them`}.`}
            </p>
          ) : null}
          <p className="mt-3 max-w-[42rem] text-small">
            {`The shares above are of all units so far. ${thresholdSentence(looksMade(comparisons), locale)}`}
          </p>
        </section>
      ) : null}
    </>
  );
}

function SmallNumbersLie() {
  return (
    <Notice kind="warn" heading="Small numbers lie">
      <p>
        Who takes the hardest units has more of them come back, and a few returns more or less are chance.
        Read the intervals first. Where they overlap, the figures tell nobody apart, and they say nothing of
        how anybody works. They are for a talk about what would help, and for nobody but the owner.
      </p>
    </Notice>
  );
}

function together(figures: readonly GroupFigure[]) {
  return {
    returned: figures.reduce((sum, { tally }) => sum + tally.returned, 0),
    units: figures.reduce((sum, { tally }) => sum + tally.units, 0),
  };
}

function addressOf(grouping: Grouping, id: string): Route {
  return grouping === 'repair'
    ? routeTo(`/workshop/returns/repairs/${id}`)
    : routeTo(`/workshop/returns/by/${grouping}/${encodeURIComponent(id)}`);
}

function readGrouping(text: string): Grouping | undefined {
  return GROUPINGS.find((grouping) => grouping === text);
}
