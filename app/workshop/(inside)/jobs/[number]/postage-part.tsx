import { Facts } from '@/app/ui/docket/facts';
import { ActionForm } from '@/app/ui/forms/action-form';
import { ConfirmButton } from '@/app/ui/forms/confirm-button';
import { TextArea } from '@/app/ui/forms/text-area';
import { PhotoStrip } from '@/app/ui/photos/photo';
import { dayInZone } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';
import { refundDue } from '@/lib/invoices/rules/owed-back';
import { formatMoney } from '@/lib/money/amount';
import { readPostageStanding } from '@/lib/warranty/stored-postage';
import { paidBack } from '@/lib/warranty/write-closed-claim';
import { endPostageAsked } from './actions';
import { carriedFields } from './carried-fields';
import type { SheetProps } from './open-sheet';
import { staffPhotos } from './staff-photos';

type PostageProps = Pick<SheetProps, 'job' | 'workshop'> & { mayEnd: boolean };

/** The postage that the customer of a covered claim may ask for: what they asked, with the receipt, and the way to end it unpaid. */
export function PostagePart({ job, workshop, mayEnd }: PostageProps) {
  const { claim } = job;
  const standing = readPostageStanding(claim);
  if (!claim || (standing !== 'asked' && standing !== 'to-ask')) return null;
  const on = claim.postageAskedAt && dayInZone(claim.postageAskedAt, workshop.timeZone);
  const paid = paidBack(job);
  const isErased = job.customer.erasedAt !== null;
  const isAsked = standing === 'asked';
  return (
    <div id="postage">
      <h3>Postage of the claim</h3>
      {isAsked ? (
        <>
          <Facts
            items={[
              {
                term: 'Asked for',
                text: formatMoney(claim.postageMinor ?? 0, workshop.currency, workshop.locale),
              },
              {
                term: 'Paid back of it',
                text: paid > 0 && formatMoney(paid, workshop.currency, workshop.locale),
              },
              { term: 'To go to', text: <span className="written">{claim.postageTo}</span> },
              { term: 'Pay it back by', text: on && formatDay(refundDue(on), workshop.locale, 'weekday') },
            ]}
          />
          <PhotoStrip label="The receipt" photos={staffPhotos(job, ({ purpose }) => purpose === 'receipt')} />
        </>
      ) : (
        <p>The customer may ask for it on their page, and has not.</p>
      )}
      {mayEnd && (isAsked || !isErased) ? (
        <ActionForm
          action={endPostageAsked.bind(null, job.number)}
          hidden={carriedFields(job.version)}
          label="No postage to pay back"
        >
          <ConfirmButton
            label="No postage to pay back"
            question="End it without paying?"
            confirm="End it without paying"
            consequence={
              isErased
                ? 'The data of this customer was removed: no mail is written.'
                : isAsked
                  ? 'The customer gets a mail with your reason, and reads it on their page.'
                  : 'The customer is not asked on their page any more, and reads there that it is closed. No mail.'
            }
          >
            <TextArea
              name="reason"
              label={isAsked ? 'Why, in words for the customer' : 'Why'}
              hint="For instance that they told you they want none."
              rows={2}
              maxLength={500}
            />
          </ConfirmButton>
        </ActionForm>
      ) : null}
    </div>
  );
}
