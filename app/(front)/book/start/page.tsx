import type { Metadata } from 'next';
import { nothingHere } from '@/app/nothing-here';
import { readWorkshop } from '@/app/read-workshop';
import { Facts } from '@/app/ui/docket/facts';
import { ActionForm } from '@/app/ui/forms/action-form';
import { SubmitBar } from '@/app/ui/forms/submit';
import { PageHead } from '@/app/ui/page/page-head';
import { TextLink } from '@/app/ui/page/text-link';
import { describePeriod } from '@/lib/calendar/period';
import { workingDaysWords } from '@/lib/calendar/working';
import { unitName } from '@/lib/catalogue/rules/unit-name';
import { now } from '@/lib/clock';
import { readBookingRepair } from '@/lib/jobs/booking-repair';
import { formatMoney } from '@/lib/money/amount';
import { promisesToday } from '@/lib/promise/promises-today';
import { readAim } from '@/lib/promise/rules/aim';
import { keptWords, promiseWords } from '@/lib/promise/rules/promise-words';
import { keptPromises } from '@/lib/promise/stored-kept';
import { laterNoWords } from '@/lib/quotes/rules/after-no';
import { takesBookings } from '@/lib/workshop/rules/missing-settings';
import { NoBookings } from '../../no-bookings';
import { startBooking } from '../actions';

export const metadata: Metadata = { title: 'Before you book' };

type Props = { searchParams: Promise<{ repair?: string | string[] }> };

export default async function BeforeBookingPage({ searchParams }: Props) {
  const { repair: id } = await searchParams;
  const repair = typeof id === 'string' ? await readBookingRepair(id) : null;
  if (!repair) nothingHere();
  const workshop = await readWorkshop();
  const isOpen = takesBookings(workshop);
  const money = (minor: number) => formatMoney(minor, workshop.currency, workshop.locale);
  const { terms, returnFeeMinor } = repair;
  const at = now();
  const promise = (await promisesToday([repair.id], at)).get(repair.id);
  const kept = keptWords(await keptPromises(at, workshop));
  const told = { locale: workshop.locale, aim: readAim(workshop.promiseAim) };
  return (
    <>
      <PageHead
        above={<TextLink href={`/prices/${repair.model.slug}`}>{unitName(repair.model)}</TextLink>}
        title={repair.name}
        lead={repair.summary}
        next={isOpen ? 'five short steps, about three minutes. You pay nothing now.' : null}
      />
      <Facts
        items={[
          { term: 'Price with tax', text: money(repair.grossMinor) },
          {
            term: 'Usual time',
            text: `${workingDaysWords(repair.workingDays)} from the day your unit is here`,
          },
          {
            term: 'Promise',
            text: promise ? [promiseWords(promise, told), kept].filter(Boolean).join(' ') : null,
          },
          { term: 'Our work is covered for', text: terms.workTerm ? describePeriod(terms.workTerm) : null },
          {
            term: 'Parts we fit are covered for',
            text: terms.partsTerm ? describePeriod(terms.partsTerm) : null,
          },
          {
            term: 'If we find something else',
            text: `We ask you before it costs more. ${laterNoWords({ inspectionFee: 0, returnFee: returnFeeMinor }, money)}`,
          },
          {
            term: 'Posting it to us',
            text: 'You choose the carrier and pay the postage to us. The way back is in the price.',
          },
        ]}
      />
      <NoBookings workshop={workshop} />
      {isOpen ? (
        <ActionForm action={startBooking} hidden={{ repair: repair.id }}>
          <SubmitBar
            label="Start the booking"
            consequence="Nothing is booked until you agree at the last step."
            second={{ href: `/prices/${repair.model.slug}`, label: 'Other repairs for this unit' }}
          />
        </ActionForm>
      ) : null}
    </>
  );
}
