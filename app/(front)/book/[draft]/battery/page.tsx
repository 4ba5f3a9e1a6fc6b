import type { Metadata } from 'next';
import { nothingHere } from '@/app/nothing-here';
import { readWorkshop } from '@/app/read-workshop';
import { LinkButton } from '@/app/ui/page/button';
import { PageHead } from '@/app/ui/page/page-head';
import { readBookingRepair } from '@/lib/jobs/booking-repair';
import { readDraft } from '@/lib/jobs/draft';
import { postedAnswer } from '@/lib/jobs/rules/posted-answer';
import { recalledCellsOf } from '@/lib/jobs/stored-recall';
import { BatteryStop } from '../../../battery-stop';

export const metadata: Metadata = { title: 'Please do not post it', robots: { index: false } };

type Props = {
  params: Promise<{ draft: string }>;
  searchParams: Promise<{ answer?: string | string[] }>;
};

/** Where a booking stops because of the battery, with what to do instead. */
export default async function BatteryStopPage({ params, searchParams }: Props) {
  const { draft } = await params;
  const { answer } = await searchParams;
  const found = await readDraft(draft);
  const repair = found ? await readBookingRepair(found.repairId, found.quoteId) : null;
  if (!repair) nothingHere();
  const cells = await recalledCellsOf({ modelId: repair.model.id, serial: found?.answers.unit?.serial });
  const verdict = postedAnswer(repair.model, typeof answer === 'string' ? answer : 'unknown', cells);
  if (verdict.may !== 'do-not-post') nothingHere();
  const workshop = await readWorkshop();
  return (
    <>
      <PageHead
        title="Please do not post this unit"
        lead="We stop here for your safety and for everyone who carries the parcel. Nothing is booked, and it costs nothing."
      />
      <BatteryStop verdict={verdict} workshop={workshop} />
      <p className="page-actions">
        <LinkButton href={`/book/${draft}/parcel`} kind="second">
          I chose the wrong answer
        </LinkButton>
      </p>
    </>
  );
}
