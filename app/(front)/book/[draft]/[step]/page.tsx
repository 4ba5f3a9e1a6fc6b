import type { Metadata } from 'next';
import { redirect } from 'next/navigation';
import { nothingHere } from '@/app/nothing-here';
import { readWorkshop } from '@/app/read-workshop';
import { PageHead } from '@/app/ui/page/page-head';
import { Steps } from '@/app/ui/page/steps';
import { unitName } from '@/lib/catalogue/rules/unit-name';
import { readBookingRepair } from '@/lib/jobs/booking-repair';
import { readDraft } from '@/lib/jobs/draft';
import { newestTokenOf } from '@/lib/jobs/private-link';
import { BOOKING_STEPS, isStep, nextStep } from '@/lib/jobs/rules/booking';
import { batteryAnswer, postedAnswer } from '@/lib/jobs/rules/posted-answer';
import { recalledCellsOf } from '@/lib/jobs/stored-recall';
import { showNumber } from '@/lib/numbers/job-number';
import { takesBookings } from '@/lib/workshop/rules/missing-settings';
import { NoBookings } from '../../../no-bookings';
import { AddressStep } from './address-step';
import { ConfirmStep } from './confirm-step';
import { NotOffered } from './not-offered';
import { ParcelStep } from './parcel-step';
import { ProblemStep } from './problem-step';
import { UnitStep } from './unit-step';

const STEP_NAMES = ['The unit', 'What is wrong', 'What you send', 'Your address', 'Check and book'];

const TITLES = {
  unit: 'Which unit is it?',
  problem: 'What is wrong with it?',
  parcel: 'What goes in the parcel?',
  address: 'Where do we send it back?',
  confirm: 'Check and book',
} as const;

type Props = { params: Promise<{ draft: string; step: string }> };

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const { step } = await params;
  const at = isStep(step) ? BOOKING_STEPS.indexOf(step) : -1;
  const where = at < 0 ? '' : `Step ${at + 1} of ${BOOKING_STEPS.length}: ${STEP_NAMES[at]} – `;
  return { title: `${where}Book a repair`, robots: { index: false } };
}

export default async function BookingStepPage({ params }: Props) {
  const { draft: token, step } = await params;
  if (!isStep(step)) nothingHere();
  const draft = await readDraft(token);
  const repair = draft ? await readBookingRepair(draft.repairId, draft.quoteId) : null;
  if (!draft) nothingHere();
  if (draft.jobId) {
    const sent = await newestTokenOf(draft.jobId);
    if (!sent) nothingHere();
    redirect(`/job/${sent}`);
  }
  if (!repair) return <NotOffered isQuote={draft.quoteId !== null} />;
  const workshop = await readWorkshop();
  if (!takesBookings(workshop)) {
    return (
      <>
        <PageHead title="Nothing is booked" />
        <NoBookings workshop={workshop} />
      </>
    );
  }
  // A step further on than the answers reach leads back to the first one that is missing.
  const next = nextStep(draft.answers);
  if (BOOKING_STEPS.indexOf(step) > BOOKING_STEPS.indexOf(next)) redirect(`/book/${token}/${next}`);
  // A battery that must not be posted stops the booking whichever way a later step is reached.
  const battery = draft.answers.parcel?.battery;
  const isLater = BOOKING_STEPS.indexOf(step) > BOOKING_STEPS.indexOf('parcel');
  const cells =
    isLater && battery
      ? await recalledCellsOf({ modelId: repair.model.id, serial: draft.answers.unit?.serial })
      : [];
  if (isLater && battery && postedAnswer(repair.model, battery, cells).may === 'do-not-post') {
    redirect(`/book/${token}/battery?answer=${batteryAnswer(repair.model, battery)}`);
  }

  const at = BOOKING_STEPS.indexOf(step) + 1;
  const shared = { token, repair, workshop, answers: draft.answers };
  return (
    <>
      <PageHead
        above={<Steps at={at} names={STEP_NAMES} />}
        title={TITLES[step]}
        lead={
          repair.quote
            ? `${unitName(repair.model)}, at the price of quote ${showNumber(repair.quote.number)}`
            : `${repair.name}, ${unitName(repair.model)}`
        }
      />
      {step === 'unit' ? <UnitStep {...shared} /> : null}
      {step === 'problem' ? <ProblemStep {...shared} /> : null}
      {step === 'parcel' ? <ParcelStep {...shared} /> : null}
      {step === 'address' ? <AddressStep {...shared} /> : null}
      {step === 'confirm' ? <ConfirmStep {...shared} /> : null}
    </>
  );
}
