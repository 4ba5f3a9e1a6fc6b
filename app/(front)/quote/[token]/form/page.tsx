import type { Metadata } from 'next';
import { nothingHere } from '@/app/nothing-here';
import { Docket } from '@/app/ui/docket/docket';
import { LinkButton } from '@/app/ui/page/button';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { TextLink } from '@/app/ui/page/text-link';
import { formatDay } from '@/lib/calendar/format';
import { showNumber } from '@/lib/numbers/job-number';
import { repairFormData } from '@/lib/quotes/repair-form-data';
import { REPAIR_FORM_LAW, REPAIR_FORM_TITLE } from '@/lib/quotes/rules/repair-form';
import { quoteOfToken } from '../open-quote';
import { FormFields } from './form-fields';

export const metadata: Metadata = { title: REPAIR_FORM_TITLE, robots: { index: false, follow: false } };

/** The quote in the fields of the European form, to read, print or keep. */
export default async function RepairFormPage({ params }: { params: Promise<{ token: string }> }) {
  const { token } = await params;
  const quote = await quoteOfToken(token);
  if (!quote) nothingHere();
  const form = await repairFormData(quote, { token });
  const back = <TextLink href={`/quote/${token}`}>{`Quote ${showNumber(quote.number)}`}</TextLink>;
  if (!form) {
    return (
      <>
        <PageHead above={back} title={REPAIR_FORM_TITLE} />
        <Notice kind="note" heading="Not yet">
          <p>The form is filled in with the price. We have not sent you one that it could hold.</p>
        </Notice>
      </>
    );
  }
  const { locale } = form.setting;
  return (
    <>
      <PageHead
        above={back}
        title={REPAIR_FORM_TITLE}
        lead={`The form of ${REPAIR_FORM_LAW}, filled in from your quote. It costs nothing.`}
        next={
          quote.request.state === 'quoted'
            ? `you say yes or no on the page of your quote, by ${formatDay(form.validUntil, locale, 'weekday')}. Until then we keep to what stands here.`
            : 'the page of your quote says where it stands.'
        }
      >
        <LinkButton href={`/quote/${token}`}>Back to your quote</LinkButton>
        <LinkButton href={`/quote/${token}/form.pdf`} kind="second" file>
          Keep it (PDF)
        </LinkButton>
      </PageHead>
      <div className="print:[&_.docket]:break-inside-auto!">
        <Docket
          kind="Quote"
          number={showNumber(form.number)}
          heading={form.unit.model}
          headingLevel={2}
          qr={
            form.answerUrl
              ? { text: form.answerUrl, alt: 'QR code that opens this quote to answer it' }
              : undefined
          }
          stubFacts={[
            { term: 'Revision', text: String(form.revision) },
            { term: 'Provided', text: formatDay(form.providedOn, locale, 'short') },
            { term: 'Held until', text: formatDay(form.validUntil, locale, 'weekday') },
          ]}
        >
          <FormFields fields={form.fields} />
        </Docket>
      </div>
    </>
  );
}
