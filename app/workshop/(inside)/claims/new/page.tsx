import type { Metadata } from 'next';
import { readWorkshop } from '@/app/read-workshop';
import { Facts } from '@/app/ui/docket/facts';
import { Notice } from '@/app/ui/page/notice';
import { NumberForm } from '@/app/ui/page/number-form';
import { PageHead } from '@/app/ui/page/page-head';
import { TextLink } from '@/app/ui/page/text-link';
import { NumberText } from '@/app/ui/words/number-text';
import { requireStaff, type Staff } from '@/app/workshop/who';
import { formatDay } from '@/lib/calendar/format';
import { now } from '@/lib/clock';
import { showNumber } from '@/lib/numbers/job-number';
import { may } from '@/lib/people/rules/roles';
import { coverView } from '@/lib/warranty/cover-view';
import { findCertificates } from '@/lib/warranty/find-certificates';
import { type Chain, readChain } from '@/lib/warranty/records';
import type { WorkshopCard } from '@/lib/workshop/card';
import { ClaimAtDeskForm } from './claim-at-desk-form';

export const metadata: Metadata = { title: 'Open a claim' };

type Props = { searchParams: Promise<{ certificate?: string | string[] }> };

/** A claim in the customer's place: told by telephone, or for a unit that came back without one. */
export default async function ClaimAtDeskPage({ searchParams }: Props) {
  const who = await requireStaff('take-in');
  const typed = String((await searchParams).certificate ?? '');
  const [numbers, workshop] = await Promise.all([findCertificates(typed), readWorkshop()]);
  const [only, ...more] = numbers;
  const chain = only && more.length === 0 ? await readChain(only) : null;
  return (
    <>
      <PageHead
        above={<TextLink href="/workshop/claims">Claims</TextLink>}
        title="Open a claim"
        lead="For a customer who calls or writes, and for a unit that came back without a claim."
      />
      {chain ? (
        <OnCertificate chain={chain} workshop={workshop} who={who} />
      ) : (
        <>
          <NumberForm
            action="/workshop/claims/new"
            name="certificate"
            label="Certificate, or serial of the unit"
            hint="It stands on the certificate and on the unit. A certificate’s code works too."
            value={typed}
            problem={typed !== '' && more.length === 0 ? 'No certificate is known by this.' : null}
            submit="Find the certificate"
            autoFocus
            scan
          />
          {more.length > 0 ? <SeveralFit numbers={numbers} /> : null}
        </>
      )}
    </>
  );
}

function SeveralFit({ numbers }: { numbers: readonly string[] }) {
  return (
    <section aria-labelledby="several">
      <h2 id="several">More than one certificate is in force for this serial</h2>
      <ul>
        {numbers.map((number) => (
          <li key={number} className="py-2.5">
            <TextLink href={`/workshop/claims/new?certificate=${number}`}>
              Certificate <NumberText text={showNumber(number)} />
            </TextLink>
          </li>
        ))}
      </ul>
    </section>
  );
}

type CaseProps = { chain: Chain; workshop: WorkshopCard; who: Staff };

async function OnCertificate({ chain, workshop, who }: CaseProps) {
  const { inForce, openClaim } = chain;
  const { locale } = workshop;
  const cover = await coverView(chain, inForce, { workshop, now: now() });
  const until = formatDay(cover.endsOn, locale, 'short');
  return (
    <>
      <Facts
        items={[
          { term: 'Certificate', text: <NumberText text={showNumber(inForce.number)} /> },
          { term: 'Unit', text: inForce.modelName },
          { term: 'Serial on it', text: <NumberText text={inForce.serialTyped} /> },
          { term: 'Cover', text: cover.isRunning ? `runs until ${until}` : `ended on ${until}` },
        ]}
      />
      {openClaim ? (
        <Notice kind="note" heading="A claim is open already">
          <p>
            <TextLink href={`/workshop/claims/${openClaim.number}`}>
              Claim <NumberText text={showNumber(openClaim.number)} />
            </TextLink>
            {openClaim.arrivedOn ? ', and its unit is here.' : '. Its unit is taken in under it.'}
          </p>
        </Notice>
      ) : (
        <>
          {cover.isRunning ? null : <EndedNotice />}
          <ClaimAtDeskForm chain={chain} workshop={workshop} mayLookAgain={may(who.role, 'second-look')} />
        </>
      )}
    </>
  );
}

/** Said before the form is filled in for nothing. */
function EndedNotice() {
  return (
    <Notice kind="warn" heading="Its cover has ended">
      <p>
        In the days of grace anybody here may open a claim, and whether it is let in is decided with the
        ruling. After them the owner alone may, with a reason. Otherwise{' '}
        <TextLink href="/workshop/arrivals/new">take the unit in without a claim</TextLink>: the customer is
        asked for a price.
      </p>
    </Notice>
  );
}
