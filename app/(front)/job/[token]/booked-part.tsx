import { ActionForm } from '@/app/ui/forms/action-form';
import { ConfirmButton } from '@/app/ui/forms/confirm-button';
import { SubmitButton } from '@/app/ui/forms/submit';
import { TextField } from '@/app/ui/forms/text-field';
import { LinkButton } from '@/app/ui/page/button';
import { NumberText } from '@/app/ui/words/number-text';
import { dayFromDate } from '@/lib/calendar/day';
import { cancelClaimWords } from '@/lib/jobs/rules/again-words';
import type { SlipAnswer } from '@/lib/jobs/rules/packing-slip';
import { showNumber } from '@/lib/numbers/job-number';
import { countryAbroad } from '@/lib/parcels/rules/country-abroad';
import type { ClaimAgain } from '@/lib/warranty/rules/claim-again';
import { postalLines } from '@/lib/workshop/rules/letterhead';
import { BatteryStop } from '../../battery-stop';
import { ClosureNotice } from '../../closure-notice';
import { cancelBooking, giveReference } from './actions';
import type { PartProps } from './part-props';

type Props = PartProps & {
  slip: SlipAnswer;
  /** of a claim: whether it could be opened again after it was cancelled */
  claimAgain: ClaimAgain | undefined;
};

/** Until the parcel is here: how to post it or why not to, the carrier's reference, and the way out. */
export function BookedPart({ job, token, workshop, slip, claimAgain }: Props) {
  const claimWords =
    job.claim && claimAgain
      ? cancelClaimWords(
          { countsFrom: dayFromDate(job.claim.openedOn), claim: claimAgain, mayPost: slip.isOffered },
          workshop.locale,
        )
      : null;
  const cancel = (
    <ActionForm action={cancelBooking.bind(null, token)} label="Cancel">
      <ConfirmButton
        label={claimWords ? 'Cancel this claim' : 'Cancel this booking'}
        question={claimWords ?? 'Cancel it?'}
        confirm={claimWords ? 'Yes, cancel the claim' : 'Yes, cancel the booking'}
        consequence="It costs nothing. Please do not post the unit afterwards."
      />
    </ActionForm>
  );
  if (!slip.isOffered) {
    return (
      <>
        {slip.stop ? <BatteryStop verdict={slip.stop} workshop={workshop} /> : null}
        {cancel}
      </>
    );
  }
  const abroad = countryAbroad(workshop.country, { country: job.customer.country, locale: workshop.locale });
  const address = [workshop.name, ...postalLines(workshop, abroad)];
  return (
    <section aria-labelledby="post-it">
      <h2 id="post-it">Post your unit</h2>
      <ClosureNotice workshop={workshop} />
      <p>
        <LinkButton href={`/job/${token}/slip.pdf`} file>
          Packing slip (PDF)
        </LinkButton>
      </p>
      <p>
        No printer? Write <NumberText text={showNumber(job.number)} /> on a piece of paper, put it in the
        parcel, and post it to:
      </p>
      <address className="postal">
        {address.map((line) => (
          <span key={line} className="block">
            {line}
          </span>
        ))}
      </address>
      <ActionForm action={giveReference.bind(null, token)} label="Parcel reference">
        <TextField
          name="reference"
          label="The number on your post receipt"
          hint={
            job.inboundReference === ''
              ? 'If you give it, we can look out for your parcel.'
              : 'We look out for a parcel with this number. If it is wrong, put it right, or leave the field empty.'
          }
          optional
          mono
          autoComplete="off"
          maxLength={60}
          defaultValue={job.inboundReference}
        />
        <SubmitButton label="Keep this number" kind="second" />
      </ActionForm>
      {cancel}
    </section>
  );
}
