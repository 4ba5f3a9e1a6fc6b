import { Facts } from '@/app/ui/docket/facts';
import { Table } from '@/app/ui/page/table';
import { TextLink } from '@/app/ui/page/text-link';
import { PhotoStrip } from '@/app/ui/photos/photo';
import { NumberText } from '@/app/ui/words/number-text';
import { NumberLink } from '@/app/workshop/number-link';
import { minutesOf } from '@/lib/bench/rules/minutes-by';
import { dayInZone } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';
import type { JobRecord } from '@/lib/jobs/records';
import { isCollected } from '@/lib/jobs/rules/handover';
import type { WorkshopCard } from '@/lib/workshop/card';
import { casePhoto } from './case-photos';

type Props = {
  heading: string;
  job: JobRecord;
  workshop: WorkshopCard;
  names: ReadonlyMap<string, { name: string; initials: string }>;
};

/** One of the two columns: what was found, what was done by whom, and which parts of which lots went in. */
export function Side({ heading, job, workshop, names }: Props) {
  const { locale, timeZone } = workshop;
  const on = (at: Date | null) => (at ? formatDay(dayInZone(at, timeZone), locale, 'short') : null);
  const minutes = minutesOf(job.work);
  return (
    <div>
      <h3>{heading}</h3>
      <Facts
        items={[
          {
            term: 'Job',
            text: <NumberLink of="jobs" number={job.number} />,
          },
          { term: 'Arrived', text: on(job.arrivedAt) },
          { term: isCollected(job.events) ? 'Collected' : 'Sent back', text: on(job.sentBackAt) },
          { term: 'Serial', text: <NumberText text={job.arrivedSerial ?? job.serialTyped} /> },
          { term: 'Problem told', text: job.problem },
          { term: 'Worked on by', text: whoWorked(job, names) },
          { term: 'Time', text: minutes > 0 ? `${minutes} min` : null },
        ]}
      />
      <h4 className="mt-4 mb-2">Findings</h4>
      {job.findings.length === 0 ? (
        <p className="text-soft">None recorded.</p>
      ) : (
        <ul className="plain-list">
          {job.findings.map((finding) => (
            <li key={finding.id} className="written">
              {finding.text}
            </li>
          ))}
        </ul>
      )}
      {job.work.length > 0 ? (
        <>
          <h4 className="mt-4 mb-2">Work</h4>
          <ul className="plain-list">
            {job.work.map((entry) => (
              <li key={entry.id} className="written">
                {`${entry.text} (${names.get(entry.userId)?.initials ?? '?'}, ${entry.minutes} min)`}
              </li>
            ))}
          </ul>
        </>
      ) : null}
      <h4 className="mt-4 mb-2">Parts and lots</h4>
      <Table
        caption={`Parts and lots: ${heading}`}
        captionHidden
        keep
        rows={job.partUses}
        rowKey={(use) => use.id}
        empty="No part was fitted."
        columns={[
          { head: 'Part', kind: 'rowhead', cell: (use) => use.lot.part.name },
          {
            head: 'Lot',
            cell: (use) => (
              <TextLink href={`/workshop/parts/lots/${use.lotId}`}>
                <NumberText text={use.lot.code} />
              </TextLink>
            ),
          },
          { head: 'Pieces', kind: 'number', cell: (use) => use.quantity },
        ]}
      />
      {job.photos.length > 0 ? (
        <>
          <h4 className="mt-4 mb-2">Photos</h4>
          <PhotoStrip
            label={`Photos: ${heading}`}
            photos={job.photos.map((photo) => casePhoto(photo, workshop, 'thumb'))}
          />
        </>
      ) : null}
    </div>
  );
}

function whoWorked(job: JobRecord, names: Props['names']): string {
  const ids = new Set([...job.work, ...job.checkEntries, ...job.findings].map((entry) => entry.userId));
  return [...ids].map((id) => names.get(id)?.name ?? 'somebody who left').join(', ');
}
