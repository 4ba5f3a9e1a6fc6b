import type { ReactNode } from 'react';
import { Facts } from '@/app/ui/docket/facts';
import { ActionForm } from '@/app/ui/forms/action-form';
import { MoneyField } from '@/app/ui/forms/money-field';
import { PhotosField } from '@/app/ui/forms/photos-field';
import { SubmitButton } from '@/app/ui/forms/submit';
import { TextArea } from '@/app/ui/forms/text-area';
import { compareDays, type Day, dayInZone } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';
import { now } from '@/lib/clock';
import { refundDue } from '@/lib/invoices/rules/owed-back';
import { MOST_RECEIPTS } from '@/lib/jobs/rules/most-photos';
import { formatMoney } from '@/lib/money/amount';
import { postageProblem, toldOfEnd } from '@/lib/warranty/rules/postage';
import { ASK_FOR_POSTAGE, POSTAGE_STAYS } from '@/lib/warranty/rules/postage-words';
import { readPostageStanding } from '@/lib/warranty/stored-postage';
import { paidBack } from '@/lib/warranty/write-closed-claim';
import { askForPostage } from './actions';
import type { PartProps } from './part-props';

/**
 * What posting the unit under a claim cost: asked for once a ruling covers something, then what became of it. The receipt itself
 * stands below, in claim-part.tsx, whatever became of it.
 */
export function PostagePart({ job, token, workshop }: PartProps) {
  const { claim } = job;
  if (!claim) return null;
  switch (readPostageStanding(claim)) {
    case 'not-due':
      return <p>{POSTAGE_STAYS}</p>;
    case 'to-ask':
      return (
        <Postage>
          <p>{ASK_FOR_POSTAGE}.</p>
          <ActionForm action={askForPostage.bind(null, token)} label="Your postage">
            <MoneyField name="amount" label="What it cost you" currency={workshop.currency} />
            <PhotosField label="Photo of the receipt" most={MOST_RECEIPTS} />
            <TextArea
              name="to"
              label="Where to send the money"
              hint="For instance your name and bank account. Only we see it."
              rows={3}
              maxLength={300}
            />
            <SubmitButton
              label="Ask for the postage back"
              kind="second"
              consequence="We pay it back within 14 days and write to you when we have."
            />
          </ActionForm>
        </Postage>
      );
    case 'asked': {
      const paid = paidBack(job);
      const on = claim.postageAskedAt && dayInZone(claim.postageAskedAt, workshop.timeZone);
      return (
        <Postage>
          <Facts
            items={[
              {
                term: 'You asked for',
                text: formatMoney(claim.postageMinor ?? 0, workshop.currency, workshop.locale),
              },
              {
                term: 'Paid back of it',
                text: paid > 0 && formatMoney(paid, workshop.currency, workshop.locale),
              },
              { term: 'To go to', text: <span className="written">{claim.postageTo}</span> },
              { term: 'We pay it back by', text: on && dueWords(refundDue(on), workshop) },
            ]}
          />
        </Postage>
      );
    }
    // What was paid stands among the payments.
    case 'paid':
      return null;
    // The ruling's mail leads here, so that it ended is said, also to whoever never asked.
    case 'not-wanted': {
      const reason = toldOfEnd(job.events, { isAsked: claim.postageAskedAt !== null });
      return (
        <Postage>
          {reason ? <p className="written">{reason}</p> : null}
          <p>{postageProblem('not-wanted')}</p>
        </Postage>
      );
    }
  }
}

/** The day, and once it has passed, that it has: nobody waits well who is told an old day. */
function dueWords(due: Day, { locale, timeZone }: PartProps['workshop']): string {
  const by = formatDay(due, locale, 'weekday');
  const isLate = compareDays(due, dayInZone(now(), timeZone)) < 0;
  return isLate ? `${by}. We are late with it, and are sorry.` : by;
}

function Postage({ children }: { children: ReactNode }) {
  return (
    <div id="postage" className="mt-8 grid gap-3">
      <h3>Your postage</h3>
      {children}
    </div>
  );
}
