import { readWorkshop } from '@/app/read-workshop';
import { Docket, DocketSection } from '@/app/ui/docket/docket';
import { Facts } from '@/app/ui/docket/facts';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { Table } from '@/app/ui/page/table';
import { Tag } from '@/app/ui/page/tag';
import { TextLink } from '@/app/ui/page/text-link';
import { NumberText } from '@/app/ui/words/number-text';
import { cellsOf } from '@/lib/bench/stored-recalls';
import { formatDay } from '@/lib/calendar/format';
import { now } from '@/lib/clock';
import { piecesToWarnOf } from '@/lib/jobs/stored-recall';
import { showNumber } from '@/lib/numbers/job-number';
import { coverView } from '@/lib/warranty/cover-view';
import { isGenuine } from '@/lib/warranty/genuine';
import { type CertificateRecord, type Chain, unitOfChain } from '@/lib/warranty/records';
import { RecallNotice } from '../../recall-notice';
import { ClaimPart } from './claim-part';

type Props = {
  chain: Chain;
  /** the revision the person holds */
  asked: CertificateRecord;
  /** shown only to who holds the signed code */
  serial: string | null;
};

export async function CertificateView({ chain, asked, serial }: Props) {
  const workshop = await readWorkshop();
  const { locale } = workshop;
  const { inForce } = chain;
  const view = await coverView(chain, inForce, { workshop, now: now() });
  const genuine = await isGenuine(asked);
  const [first = chain.inForce] = chain.revisions;
  const recalled = await piecesToWarnOf(unitOfChain(chain), first.issuedAt);
  const isReplaced = asked.id !== inForce.id;
  const until = formatDay(view.endsOn, locale, 'weekday');
  return (
    <>
      <PageHead
        title={view.isRunning ? `Covered until the end of ${until}` : `Cover ended on ${until}`}
        lead={`Certificate of ${workshop.name} for a repair, issued on ${formatDay(view.issuedOn, locale, 'short')}.`}
        next={
          recalled.length > 0
            ? 'please read first what stands below about a part in this unit, and answer us. Putting it right is free.'
            : chain.openClaim
              ? 'a claim is open on this certificate. The private link in our e-mail shows where it stands.'
              : 'has it failed again? Answer three questions below and see at once where you stand. It is free.'
        }
      />
      <RecallNotice
        pieces={recalled}
        workshop={workshop}
        answer={
          <>
            Please answer us on the page that our private link opens, or write to{' '}
            <a href={`mailto:${workshop.email}`}>{workshop.email}</a>.
          </>
        }
      />
      {genuine ? null : (
        <Notice kind="stop" heading="Something does not fit">
          <p>
            What this certificate says is not what we signed. Please write to us at{' '}
            <a href={`mailto:${workshop.email}`}>{workshop.email}</a>.
          </p>
        </Notice>
      )}
      {isReplaced ? (
        <Notice kind="note" heading={`Revision ${asked.revision} is superseded`}>
          <p>{`It was replaced by revision ${inForce.revision} on ${formatDay(view.issuedOn, locale, 'short')}. What counts is shown here.`}</p>
        </Notice>
      ) : null}
      <Docket
        kind="Certificate"
        number={showNumber(inForce.number)}
        heading={`Revision ${inForce.revision}`}
        tag={view.isRunning ? <Tag tone="good">in cover</Tag> : <Tag tone="note">cover ended</Tag>}
        stubFacts={[
          { term: 'Genuine', text: genuine ? 'yes, signed by us' : 'no' },
          { term: 'Revision', text: String(inForce.revision) },
        ]}
      >
        <Facts
          items={[
            { term: 'Unit', text: serial === null ? null : inForce.modelName },
            { term: 'Serial', text: serial === null ? null : <NumberText text={serial} /> },
            { term: 'Last day to open a claim', text: formatDay(view.lastClaimDay, locale, 'weekday') },
          ]}
        />
        <DocketSection heading="What is covered">
          <Table
            caption="Cover lines"
            captionHidden
            columns={[
              { head: 'What', kind: 'rowhead', cell: (line) => line.what },
              { head: 'From', cell: (line) => formatDay(line.from, locale, 'short') },
              { head: 'Until', cell: (line) => formatDay(line.until, locale, 'short') },
            ]}
            rows={view.lines}
            rowKey={(line) => line.id}
          />
          {[...new Set(view.lines.map((line) => line.explained))].map((sentence) => (
            <p key={sentence} className="text-small">
              {`${sentence}.`}
            </p>
          ))}
        </DocketSection>
      </Docket>
      <ClaimPart
        chain={chain}
        asked={asked}
        workshop={workshop}
        hasDoubtfulCell={cellsOf(recalled).length > 0}
      />
      <p>
        This certificate adds to your rights by law and takes none away.{' '}
        <TextLink href="/terms">Terms</TextLink>
      </p>
    </>
  );
}
