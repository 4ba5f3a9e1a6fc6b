import { ActionForm } from '@/app/ui/forms/action-form';
import { ConfirmButton } from '@/app/ui/forms/confirm-button';
import { Timeline } from '@/app/ui/page/timeline';
import { formatInstant } from '@/lib/calendar/format';
import { historyLine } from '@/lib/jobs/changes-since';
import { newLink } from './actions';
import { carriedFields } from './carried-fields';
import type { SheetProps } from './open-sheet';

const WHO: Record<string, string> = { customer: 'the customer', clock: 'the clock' };

export function HistoryPart({ job, workshop, staff }: SheetProps) {
  return (
    <section id="history" aria-labelledby="history-head">
      <h2 id="history-head">History</h2>
      <Timeline
        label="Everything that happened to this job"
        entries={job.events.toReversed().map((event) => ({
          key: event.id,
          dateTime: event.at.toISOString(),
          on: formatInstant(event.at, { locale: workshop.locale, zone: workshop.timeZone }),
          who: event.actorId ? (staff.get(event.actorId)?.name ?? 'staff') : WHO[event.actorKind],
          what: historyLine(event),
        }))}
      />
      {job.customer.erasedAt ? null : (
        <ActionForm
          action={newLink.bind(null, job.number)}
          hidden={carriedFields(job.version)}
          label="Private link"
        >
          <ConfirmButton
            label="Renew the private link"
            question="Withdraw every link to this job and send the customer a new one?"
            confirm="Yes, send a new link"
            consequence="Links in earlier mails stop working at once."
          />
        </ActionForm>
      )}
    </section>
  );
}
