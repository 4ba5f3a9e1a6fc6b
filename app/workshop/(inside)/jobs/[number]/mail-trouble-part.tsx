import { ActionForm } from '@/app/ui/forms/action-form';
import { SubmitButton } from '@/app/ui/forms/submit';
import { hasMailServer } from '@/lib/mail/mail-server';
import { troubledMail } from '@/lib/mail/records';
import { templateWords } from '@/lib/mail/rules/words';
import { may, type Role } from '@/lib/people/rules/roles';
import { MailTrouble } from '../../mail-trouble';
import { sendAgain } from './keeping-actions';
import type { SheetProps } from './open-sheet';

/** Letters about this job that did not reach the customer, each with the button that sends it again. */
export async function MailTroublePart({ job, role }: SheetProps & { role: Role }) {
  return (
    <MailTrouble
      mails={await troubledMail({ jobId: job.id })}
      role={role}
      phone={job.customer.phone}
      number={job.number}
      again={(mail) =>
        may(role, 'mail') && hasMailServer() && mail.toAddress !== '' ? (
          <ActionForm
            action={sendAgain.bind(null, job.number, mail.id)}
            label={`Send again: ${templateWords(mail.template)}`}
          >
            <SubmitButton kind="second" label="Send again" busy="Queueing…" />
          </ActionForm>
        ) : null
      }
    />
  );
}
