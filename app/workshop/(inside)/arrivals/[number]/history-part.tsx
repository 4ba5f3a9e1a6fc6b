import { DocketSection } from '@/app/ui/docket/docket';
import { Tag } from '@/app/ui/page/tag';
import { TextLink } from '@/app/ui/page/text-link';
import { NumberText } from '@/app/ui/words/number-text';
import { formatDay } from '@/lib/calendar/format';
import { now } from '@/lib/clock';
import { historyOfSerial } from '@/lib/jobs/find-arrival-history';
import type { JobRecord } from '@/lib/jobs/records';
import { STAGE_WORDS } from '@/lib/jobs/rules/stages';
import { showNumber } from '@/lib/numbers/job-number';
import { foldSerial } from '@/lib/numbers/serial';
import { type CoverView, coverView } from '@/lib/warranty/cover-view';
import { nearSerials } from '@/lib/warranty/near-serials';
import { readChain } from '@/lib/warranty/records';
import type { WorkshopCard } from '@/lib/workshop/card';
import { NearList } from '../../../near-list';

/** What is known of this serial, booked or read: earlier jobs and certificates in force. Shown without being asked for. */
export async function HistoryPart({ job, workshop }: { job: JobRecord; workshop: WorkshopCard }) {
  const { locale, timeZone } = workshop;
  const serials = [job.serialTyped, job.arrivedSerial ?? ''].map(foldSerial).filter((key) => key !== '');
  const history = await historyOfSerial({ serialKeys: serials, exceptJobId: job.id, timeZone });
  const { jobs } = history;
  // The paper states the end at its issue; days given back since then are counted here.
  const certificates = await Promise.all(
    history.certificates.map(async ({ number }) => {
      const chain = await readChain(number);
      if (!chain) throw new Error('a certificate in force has no chain');
      return { number, ...(await coverView(chain, chain.inForce, { workshop, now: now() })) };
    }),
  );
  const near = await nearSerials(job.arrivedSerial ?? job.serialTyped, { timeZone });
  const known = new Set([job.number, ...jobs.map((each) => each.number)]);
  const papers = new Set(certificates.map((each) => each.number));
  return (
    <DocketSection heading="This serial here before">
      {jobs.length === 0 && certificates.length === 0 ? <p>Never, as far as we know.</p> : null}
      <ul className="grid gap-1">
        {certificates.map((certificate) => (
          <li key={certificate.number} className="flex flex-wrap items-baseline gap-x-3">
            <TextLink href={`/workshop/search?q=${certificate.number}`}>
              Certificate <NumberText text={showNumber(certificate.number)} />
            </TextLink>
            <CoverTag cover={certificate} locale={locale} />
          </li>
        ))}
        {jobs.map((earlier) => (
          <li key={earlier.number}>
            <TextLink href={`/workshop/jobs/${earlier.number}`}>
              Job <NumberText text={showNumber(earlier.number)} />
            </TextLink>
            {`, ${earlier.repair}, booked ${formatDay(earlier.bookedOn, locale, 'short')}, ${STAGE_WORDS[earlier.stage].label.toLowerCase()}`}
          </li>
        ))}
      </ul>
      {certificates.some((certificate) => certificate.isRunning) && job.kind === 'repair' ? (
        <p className="mt-2">
          <strong>Cover is running on this unit.</strong> If it is the same fault, this should be a claim and
          free of charge
          {job.arrivedAt === null ? (
            <ClaimInstead certificates={certificates} />
          ) : (
            ': ask the customer before it is assessed.'
          )}
        </p>
      ) : null}
      <NearList
        near={{
          jobs: near.jobs.filter((each) => !known.has(each.number)),
          certificates: near.certificates.filter((each) => !papers.has(each.number)),
        }}
        locale={locale}
        heading="h4"
      />
    </DocketSection>
  );
}

/** Before it is taken in, a booking can still be cancelled for a claim. */
function ClaimInstead({ certificates }: { certificates: readonly { number: string; isRunning: boolean }[] }) {
  const running = certificates.find((each) => each.isRunning);
  return (
    <>
      {': ask the customer. Then cancel this booking on its job sheet, and '}
      <TextLink href={`/workshop/claims/new?certificate=${running?.number ?? ''}`}>
        open a claim and take it in
      </TextLink>
      .
    </>
  );
}

function CoverTag({ cover, locale }: { cover: CoverView; locale: string }) {
  const shown = formatDay(cover.endsOn, locale, 'short');
  return cover.isRunning ? (
    <Tag tone="good">{`covered until ${shown}`}</Tag>
  ) : (
    <Tag tone="note">{`cover ended ${shown}`}</Tag>
  );
}
