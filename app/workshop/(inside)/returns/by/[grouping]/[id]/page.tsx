import type { Metadata } from 'next';
import { redirect } from 'next/navigation';
import { nothingHere } from '@/app/nothing-here';
import { PageHead } from '@/app/ui/page/page-head';
import { TextLink } from '@/app/ui/page/text-link';
import { SurvivalPlot } from '@/app/ui/plots/survival-plot';
import { requireStaff } from '@/app/workshop/who';
import { now } from '@/lib/clock';
import { may } from '@/lib/people/rules/roles';
import { coverClock } from '@/lib/returns/cover-clock';
import { readGroupFigures } from '@/lib/returns/group-figures';
import { GROUPINGS } from '@/lib/returns/groupings';
import { nameOf } from '@/lib/returns/names';
import { looksMade } from '@/lib/returns/rules/evidence';
import { evidenceSentence, thresholdSentence } from '@/lib/returns/rules/evidence-words';
import { shareWords } from '@/lib/returns/rules/share-words';
import { wearOf, wearSentence } from '@/lib/returns/rules/wear';
import { watchOf } from '@/lib/returns/tallies';
import { readWorkshop } from '@/lib/workshop/records';
import { CausesPart } from '../../../parts/causes-part';
import { permissionFor, queryOf } from '../../../rows/narrowing';
import { GROUPING_WORDS } from '../../grouping-words';

type Props = { params: Promise<{ grouping: string; id: string }> };

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const { grouping: asked, id } = await params;
  const grouping = GROUPINGS.find((each) => each === asked);
  // A name may be a person's: not for those who may not see the page.
  await requireStaff(permissionFor(grouping));
  const name = grouping ? await nameOf(grouping, decodeURIComponent(id)) : null;
  return { title: name === null ? 'Not found' : `Returns of ${name}` };
}

/** One lot, part, model or pair of hands: is it bad or unlucky, when does it come back, and why. */
export default async function GroupPage({ params }: Props) {
  const { grouping: asked, id: typed } = await params;
  const grouping = GROUPINGS.find((each) => each === asked);
  const staff = await requireStaff(permissionFor(grouping));
  if (!grouping) nothingHere();
  const id = decodeURIComponent(typed);
  if (grouping === 'repair') redirect(`/workshop/returns/repairs/${encodeURIComponent(id)}`);
  const workshop = await readWorkshop();
  const { locale } = workshop;
  const clock = coverClock(workshop, now());
  const [name, figures, watch] = await Promise.all([
    nameOf(grouping, id),
    readGroupFigures(grouping, clock),
    watchOf(grouping, clock, { of: { grouping, id } }),
  ]);
  if (name === null) nothingHere();
  const figure = figures.find((each) => each.id === id);
  const words = GROUPING_WORDS[grouping];
  return (
    <>
      <PageHead
        above={
          <>
            <TextLink href="/workshop/returns">Returns</TextLink> /{' '}
            <TextLink href={`/workshop/returns/by/${grouping}`}>{words.title}</TextLink>
          </>
        }
        title={name}
        lead={
          figure
            ? `${shareWords(figure.tally, locale)} came back, in ${Math.round(figure.tally.daysAtRisk)} days of cover so far.`
            : words.empty
        }
      >
        {grouping === 'lot' ? (
          <>
            <TextLink href={`/workshop/parts/lots/${id}`}>Units that carry it, and their cover</TextLink>
            {may(staff.role, 'settings') ? (
              <TextLink href={`/workshop/parts/lots/${id}/recall`}>
                Look at a letter to everybody who carries it
              </TextLink>
            ) : null}
          </>
        ) : null}
      </PageHead>
      {figure ? (
        <>
          <section aria-labelledby="verdict">
            <h2 id="verdict">{grouping === 'lot' ? 'Bad or unlucky' : 'Beside the others'}</h2>
            <p className="max-w-[42rem]">{evidenceSentence(figure.comparison, locale)}</p>
            {figure.tally.otherwise > 0 ? (
              <p className="mt-2 max-w-[42rem]">
                {`${figure.tally.otherwise === 1 ? 'One more came' : `${figure.tally.otherwise} more came`} back for another cause, which is not counted against it.`}
              </p>
            ) : null}
            <p className="mt-3 max-w-[42rem] text-small">{`${words.counted} ${thresholdSentence(looksMade(figures.map(({ comparison }) => comparison)), locale)}`}</p>
          </section>
          <section aria-labelledby="when">
            <h2 id="when">When they come back</h2>
            <SurvivalPlot
              caption={`Returned by day, ${name}`}
              counts={watch}
              until={Math.max(30, ...watch.map(({ days }) => days))}
              locale={locale}
            />
            <p className="mt-4 max-w-[42rem]">{wearSentence(wearOf(watch), locale)}</p>
          </section>
          <CausesPart causes={figure.tally.causes} />
        </>
      ) : null}
      <p className="mt-8">
        <TextLink href={`/workshop/returns/rows${queryOf({ by: grouping, id })}`}>
          The rows behind these figures
        </TextLink>
      </p>
    </>
  );
}
