import { ActionForm } from '@/app/ui/forms/action-form';
import { ConfirmButton } from '@/app/ui/forms/confirm-button';
import { historyLine } from '@/lib/jobs/changes-since';
import { EventTimeline } from '../../timelines';
import { newLink } from './actions';
import { carriedFields } from './carried-fields';
import type { SheetProps } from './open-sheet';

export function HistoryPart({ job, workshop, staff }: SheetProps) {
  return (
    <section id="history" aria-labelledby="history-head">
      <h2 id="history-head">History</h2>
      <EventTimeline
        label="Everything that happened to this job"
        events={job.events}
        lineOf={historyLine}
        staff={staff}
        clock={{ locale: workshop.locale, zone: workshop.timeZone }}
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
