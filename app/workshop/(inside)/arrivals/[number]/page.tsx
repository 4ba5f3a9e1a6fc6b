import type { Metadata } from 'next';
import { nothingHere } from '@/app/nothing-here';
import { readWorkshop } from '@/app/read-workshop';
import { Docket } from '@/app/ui/docket/docket';
import { Facts } from '@/app/ui/docket/facts';
import { PageHead } from '@/app/ui/page/page-head';
import { TextLink } from '@/app/ui/page/text-link';
import { NumberText } from '@/app/ui/words/number-text';
import { StageTag } from '@/app/ui/words/stage-tag';
import { requireStaff } from '@/app/workshop/who';
import { dayInZone } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';
import { unitName } from '@/lib/catalogue/rules/unit-name';
import { now } from '@/lib/clock';
import { jobByNumber } from '@/lib/jobs/job-by-number';
import { readKind, readStage } from '@/lib/jobs/records';
import { isOneAddress } from '@/lib/jobs/rules/one-address';
import { STAGE_WORDS } from '@/lib/jobs/rules/stages';
import { showNumber, showTyped } from '@/lib/numbers/job-number';
import { onArrival } from '@/lib/promise/rules/on-arrival';
import { promiseDay } from '@/lib/promise/stored-promise-day';
import { OpenedNotice, OtherAddressNotice } from '../opened-notice';
import { readOpened } from '../read-opened';
import { BatteryPart } from './battery-part';
import { HistoryPart } from './history-part';
import { TakeInForm } from './take-in-form';
import { TakenIn } from './taken-in';

type Props = {
  params: Promise<{ number: string }>;
  searchParams: Promise<{ opened?: string | string[] }>;
};

export async function generateMetadata({ params }: Pick<Props, 'params'>): Promise<Metadata> {
  return { title: `Take in ${showTyped((await params).number)}` };
}

/** One parcel: before its arrival the form to take it in, after it what came of that. */
export default async function ArrivalPage({ params, searchParams }: Props) {
  await requireStaff('take-in');
  const job = await jobByNumber((await params).number);
  if (!job) nothingHere();
  const workshop = await readWorkshop();
  const { locale, timeZone } = workshop;
  const stage = readStage(job.stage);
  if (job.arrivedAt !== null) return <TakenIn job={job} workshop={workshop} />;

  const opened = await readOpened((await searchParams).opened);
  const isOther = opened?.why === null && !isOneAddress(opened.email, job.customer.email);
  const promise = await promiseDay({ repairId: job.repair.id, ...onArrival(job), now: now() });
  return (
    <>
      <PageHead
        above={
          <TextLink href="/workshop/arrivals" className="inline-block py-2.5">
            Arrivals
          </TextLink>
        }
        title={`Take in: ${unitName(job.model)}`}
        lead={`${job.repair.name}, for ${job.customer.name}.`}
      />
      <Docket
        kind={readKind(job.kind) === 'claim' ? 'Claim job' : 'Job'}
        number={showNumber(job.number)}
        heading="What was booked"
        tag={<StageTag stage={stage} />}
        stubFacts={[
          { term: 'Booked', text: formatDay(dayInZone(job.bookedAt, timeZone), locale, 'short') },
          { term: 'Parcel', text: job.inboundReference },
        ]}
      >
        <Facts
          items={[
            { term: 'Serial booked', text: <NumberText text={job.serialTyped} /> },
            { term: 'Where it stands', text: job.model.serialPlace },
            { term: 'Problem', text: job.problem },
            { term: 'On certificate', text: job.claim ? showNumber(job.claim.certificateNumber) : null },
          ]}
        />
        <HistoryPart job={job} workshop={workshop} />
      </Docket>
      <div className="mt-8 grid items-start gap-x-12 gap-y-6 lg:grid-cols-[minmax(0,3fr)_minmax(0,2fr)]">
        <div className="grid gap-6 lg:order-2">
          <BatteryPart job={job} />
        </div>
        {stage === 'booked' ? (
          <div>
            {isOther ? (
              <OtherAddressNotice opened={opened} booking={job} />
            ) : (
              <>
                {opened ? <OpenedNotice opened={opened} isFound /> : null}
                <h2 className="mb-4">Take it in</h2>
                {opened?.why ? null : (
                  <TakeInForm job={job} promise={promise} locale={locale} opened={opened} />
                )}
              </>
            )}
          </div>
        ) : (
          <p>
            {`This booking is at the stage “${STAGE_WORDS[stage].label}”. A parcel that still comes goes back unopened. `}
            <TextLink href={`/workshop/jobs/${job.number}`}>Open the job sheet</TextLink>
          </p>
        )}
      </div>
    </>
  );
}
