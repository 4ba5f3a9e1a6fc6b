import { ActionForm } from '@/app/ui/forms/action-form';
import { Checkbox, RadioGroup } from '@/app/ui/forms/choices';
import { SubmitButton } from '@/app/ui/forms/submit';
import { TextArea } from '@/app/ui/forms/text-area';
import { TextField } from '@/app/ui/forms/text-field';
import { Notice } from '@/app/ui/page/notice';
import { formatDay } from '@/lib/calendar/format';
import { now } from '@/lib/clock';
import { balanceOf } from '@/lib/invoices/rules/balance';
import { DECISIONS, decisionWords, UNCLAIMED_LAW } from '@/lib/jobs/rules/unclaimed';
import { readUnclaimed, type UnclaimedView } from '@/lib/jobs/unclaimed-view';
import { may, type Role } from '@/lib/people/rules/roles';
import { carriedFields } from './carried-fields';
import { decideOnUnit } from './keeping-actions';
import type { SheetProps } from './open-sheet';

/** Notices about a unit that nobody fetches, and the owner's decision once the last one was not answered. */
export async function UnclaimedPart({ job, workshop, role }: SheetProps & { role: Role }) {
  if (job.stage !== 'unclaimed') return null;
  const unclaimed = await readUnclaimed(job.id, now());
  if (!unclaimed) return null;
  const { locale } = workshop;
  const isDue = unclaimed.due.step === 'decide';
  return (
    <div className="grid gap-4">
      <p>{standing(unclaimed, locale)}</p>
      {isDue && !may(role, 'settings') ? <p>The owner decides what becomes of it.</p> : null}
      {isDue && may(role, 'settings') ? (
        <>
          <Notice kind="warn" heading="Local law comes first">
            <p>{UNCLAIMED_LAW}</p>
          </Notice>
          {unclaimed.notice === 'reached' ? null : (
            <Notice kind="warn" heading="The last notice did not reach the customer">
              <p>
                It came back, failed or has not left. Put the address right and send it again from the Mail
                page, or tell the customer some other way, before the unit leaves for good.
              </p>
            </Notice>
          )}
          <ActionForm
            action={decideOnUnit.bind(null, job.number)}
            hidden={carriedFields(job.version)}
            label="What becomes of the unit"
          >
            <RadioGroup
              name="decision"
              label="What becomes of the unit"
              choices={DECISIONS.map((value) => {
                const { label, consequence } = decisionWords(value, { isOwed: balanceOf(job).owed > 0 });
                return { value, label, hint: consequence };
              })}
            />
            <TextField
              name="until"
              label="Kept until"
              hint="Only where it is kept longer."
              type="date"
              optional
            />
            {unclaimed.notice === 'reached' ? null : (
              <Checkbox
                name="isToldOtherwise"
                label="I have told the customer some other way, and given them as long to answer"
                hint="By a letter or on the telephone, for instance. Write below how and when."
              />
            )}
            <TextArea name="note" label="Why" hint="The customer reads it." rows={3} maxLength={1000} />
            <SubmitButton
              label="Keep this decision"
              consequence="Stands in the history for good, and is told to the customer by mail."
            />
          </ActionForm>
        </>
      ) : null}
    </div>
  );
}

const NOTICE_WORDS = { reached: '', 'came-back': ' It came back.', 'not-left': ' It has not left yet.' };

function standing({ sentOn, due, decision, notice }: UnclaimedView, locale: string): string {
  const last = sentOn.at(-1);
  const sent = last
    ? `${sentOn.length === 1 ? '1 notice was' : `${sentOn.length} notices were`} sent, the last on ${formatDay(last, locale, 'short')}.`
    : 'No notice was sent yet.';
  const kept =
    decision?.decision === 'keep-longer' && decision.until
      ? ` The owner decided to keep it until ${formatDay(decision.until, locale, 'short')}: ${decision.note}`
      : '';
  const next =
    due.step === 'wait'
      ? ` Nothing is due before ${formatDay(due.until, locale, 'short')}.`
      : due.step === 'notice'
        ? ' The next one leaves within the hour.'
        : due.step === 'decide'
          ? ` Not answered by ${formatDay(due.since, locale, 'short')}.`
          : '';
  const lost = last ? NOTICE_WORDS[notice] : '';
  return `${sent}${lost}${kept}${next}`;
}
