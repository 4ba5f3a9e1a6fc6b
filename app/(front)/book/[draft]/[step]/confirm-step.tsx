import { Facts } from '@/app/ui/docket/facts';
import { ActionForm } from '@/app/ui/forms/action-form';
import { SubmitBar } from '@/app/ui/forms/submit';
import { Notice } from '@/app/ui/page/notice';
import { PriceTable } from '@/app/ui/page/price-table';
import { TextLink } from '@/app/ui/page/text-link';
import { MailAddress } from '@/app/ui/words/mail-address';
import { NumberText } from '@/app/ui/words/number-text';
import { workingDaysWords } from '@/lib/calendar/working';
import { coverWords } from '@/lib/catalogue/rules/cover-words';
import { unitName } from '@/lib/catalogue/rules/unit-name';
import { addressLinesOf } from '@/lib/jobs/rules/address';
import { DATA_ANSWERS, fullAnswers, HISTORY, toldAccessories } from '@/lib/jobs/rules/booking';
import { formatMoney } from '@/lib/money/amount';
import { showNumber } from '@/lib/numbers/job-number';
import { checkSerial } from '@/lib/numbers/serial';
import { readSerialRule } from '@/lib/numbers/serial-rule';
import { BATTERY_ANSWERS } from '@/lib/parcels/rules/battery-answers';
import { countryAbroad } from '@/lib/parcels/rules/country-abroad';
import { laterNoWords } from '@/lib/quotes/rules/after-no';
import { askedWords } from '@/lib/quotes/rules/asked-words';
import { postalLines } from '@/lib/workshop/rules/letterhead';
import { termsId } from '@/lib/workshop/terms-id';
import { ClosureNotice } from '../../../closure-notice';
import { confirmBooking } from '../../actions';
import { ConsumerPart, lastDayToWithdraw, StartRequest, TermsBox } from './consumer-part';
import type { StepProps } from './step-props';

export async function ConfirmStep({ token, repair, workshop, answers }: StepProps) {
  const all = fullAnswers(answers);
  if (!all) return null;
  const { unit, problem, parcel, address } = all;
  const money = (minor: number) => formatMoney(minor, workshop.currency, workshop.locale);
  const words = askedWords(repair.quote?.isInspection ?? false, money(repair.grossMinor));
  const { terms } = repair;
  const fees = { inspectionFee: repair.quote?.inspectionFee ?? 0, returnFee: repair.returnFeeMinor };
  const until = await lastDayToWithdraw(workshop);
  const serial = checkSerial(unit.serial, {
    pattern: repair.model.serialPattern,
    rule: readSerialRule(repair.model.serialRule),
  });
  const change = (step: string, what: string) => (
    <TextLink href={`/book/${token}/${step}`} aria-label={`Change ${what}`}>
      Change
    </TextLink>
  );
  return (
    <>
      <ClosureNotice workshop={workshop} />
      {serial.ok ? null : (
        <Notice kind="note" heading="Please look at the serial once more">
          <p>
            <NumberText text={unit.serial} /> is not how serials of this unit usually look. If it is what the
            unit says, just go on. {change('unit', 'the serial')}
          </p>
        </Notice>
      )}
      <Facts
        items={[
          { term: 'Repair', text: `${repair.name}, ${unitName(repair.model)}` },
          {
            term: 'What we do',
            text: repair.quote ? <span className="written">{repair.quote.proposal}</span> : null,
          },
          {
            term: 'Serial',
            text: (
              <>
                <NumberText text={unit.serial} /> {change('unit', 'the serial')}
              </>
            ),
          },
          {
            term: 'What is wrong',
            text: (
              <>
                {problem.problem}
                {problem.history.map((key) => ` ${HISTORY[key]}.`)} {change('problem', 'what is wrong')}
              </>
            ),
          },
          {
            term: 'In the parcel',
            text: (
              <>
                {['The unit', ...toldAccessories(parcel)].join(', ')}.{' '}
                {change('parcel', 'what is in the parcel')}
              </>
            ),
          },
          {
            term: 'Battery',
            text: BATTERY_ANSWERS.find(
              (answer) => answer.value === parcel.battery && repair.model.battery !== 'none',
            )?.label,
          },
          { term: 'Recordings and settings', text: DATA_ANSWERS[parcel.data] },
          {
            term: 'Back to',
            text: (
              <>
                {[
                  address.name,
                  ...postalLines(
                    { ...address, addressLines: addressLinesOf(address) },
                    countryAbroad(address.country, workshop),
                  ),
                ].join(', ')}{' '}
                {change('address', 'the address')}
              </>
            ),
          },
          {
            term: 'Mail to',
            text: (
              <>
                <MailAddress text={address.email} /> {change('address', 'the e-mail address')}
              </>
            ),
          },
          { term: 'Telephone', text: address.phone },
        ]}
      />
      <h2>What it costs and what happens</h2>
      {repair.quote ? (
        // This booking is for the lines of the quote that was said yes to, and no others.
        <PriceTable
          caption={`Agreed in quote ${showNumber(repair.quote.number)}`}
          price={repair.quote.price}
          money={money}
        />
      ) : null}
      <Facts
        items={[
          { term: 'Price with tax', text: `${money(repair.grossMinor)}, ${words.paid}` },
          {
            term: 'Now',
            text: 'You get a job number, a private link and a packing slip, and post the unit to us.',
          },
          { term: 'Usual time', text: `${workingDaysWords(repair.workingDays)} from the day it is here` },
          {
            term: 'If we find something else',
            text: `We ask you first. ${laterNoWords(fees, money)}`,
          },
          {
            term: 'Cover',
            text:
              terms.workTerm || terms.partsTerm
                ? `${repair.quote?.isInspection ? 'If you say yes to a repair: ' : ''}${coverWords(terms)}. You get a certificate.`
                : null,
          },
        ]}
      />
      {until ? <ConsumerPart workshop={workshop} until={until} inspectionFee={fees.inspectionFee} /> : null}
      <ActionForm
        action={confirmBooking.bind(null, token)}
        hidden={{
          shownMinor: repair.grossMinor,
          shownReturnFee: repair.returnFeeMinor,
          shownCover: terms.id,
          shownTerms: termsId(workshop.termsText),
        }}
      >
        <TermsBox />
        {until ? <StartRequest until={until} /> : null}
        <SubmitBar
          label={
            // A button that orders says that it costs something (Directive 2011/83/EU Art. 8(2)).
            repair.grossMinor > 0
              ? `Book this ${words.isFor} and pay ${money(repair.grossMinor)}`
              : `Book this ${words.isFor}`
          }
          busy="Booking…"
          consequence={`This is a binding order for ${money(repair.grossMinor)}, ${words.paid}. You can cancel free of charge until the unit arrives here.`}
          second={{ href: `/book/${token}/address`, label: 'Back' }}
        />
      </ActionForm>
    </>
  );
}
