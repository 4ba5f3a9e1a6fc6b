import type { Metadata } from 'next';
import { nothingHere } from '@/app/nothing-here';
import { PageHead } from '@/app/ui/page/page-head';
import { TextLink } from '@/app/ui/page/text-link';
import { SurvivalPlot } from '@/app/ui/plots/survival-plot';
import { requireStaff } from '@/app/workshop/who';
import { readRepair } from '@/lib/catalogue/staff-records';
import { now } from '@/lib/clock';
import { may } from '@/lib/people/rules/roles';
import { coverClock } from '@/lib/returns/cover-clock';
import { readLearning } from '@/lib/returns/lessons';
import { readRepairFigures } from '@/lib/returns/repair-figures';
import { readRepairTerms } from '@/lib/returns/repair-terms';
import { shareWords } from '@/lib/returns/rules/share-words';
import { wearOf, wearSentence } from '@/lib/returns/rules/wear';
import { readWorkshop } from '@/lib/workshop/records';
import { CausesPart } from '../../parts/causes-part';
import { LearningPart } from './learning-part';
import { ReservePart } from './reserve-part';

type Props = { params: Promise<{ id: string }> };

export async function generateMetadata({ params }: Pick<Props, 'params'>): Promise<Metadata> {
  await requireStaff('returns');
  const found = await readRepair((await params).id);
  return { title: found ? `Returns of ${found.name}, ${found.model.name}` : 'Not found' };
}

/** One repair: when its units come back and why, what that costs, and whether what was learnt helped. */
export default async function RepairReturnsPage({ params }: Props) {
  const staff = await requireStaff('returns');
  const { id } = await params;
  const at = now();
  const workshop = await readWorkshop();
  const clock = coverClock(workshop, at);
  const [[terms], [figure], learning] = await Promise.all([
    readRepairTerms(workshop, clock.today, [id]),
    readRepairFigures(workshop, at, id),
    readLearning(id, clock, workshop.timeZone),
  ]);
  if (!terms) nothingHere();
  const { locale } = workshop;
  const name = `${terms.name}, ${terms.model}`;
  return (
    <>
      <PageHead
        above={<TextLink href="/workshop/returns">Returns</TextLink>}
        title={name}
        lead={
          figure
            ? `${shareWords(figure.tally, locale)} came back, in ${Math.round(figure.tally.daysAtRisk)} days of cover so far.`
            : 'No unit with this repair has been sent back with a certificate yet.'
        }
      >
        <TextLink href={`/workshop/catalogue/repairs/${id}`}>Price and check sheet</TextLink>
      </PageHead>
      {figure ? (
        <>
          {may(staff.role, 'returns-cost') ? <ReservePart figure={figure} workshop={workshop} /> : null}
          <section aria-labelledby="when">
            <h2 id="when">When they come back</h2>
            <SurvivalPlot
              caption={`Returned by day, ${name}`}
              counts={figure.watch}
              until={terms.termDays ?? 365}
              locale={locale}
            />
            <p className="mt-4 max-w-[42rem]">{wearSentence(wearOf(figure.watch), locale)}</p>
          </section>
          <CausesPart causes={figure.tally.causes} />
        </>
      ) : null}
      <LearningPart learning={learning} locale={locale} />
      <p className="mt-8">
        <TextLink href={`/workshop/returns/rows?by=repair&id=${id}`}>The rows behind these figures</TextLink>
      </p>
    </>
  );
}
