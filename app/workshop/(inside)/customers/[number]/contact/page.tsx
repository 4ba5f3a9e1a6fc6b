import { redirect } from 'next/navigation';
import { nothingHere } from '@/app/nothing-here';
import { readWorkshop } from '@/app/read-workshop';
import { ActionForm } from '@/app/ui/forms/action-form';
import { AddressFields, PersonFields } from '@/app/ui/forms/address-fields';
import { Checkbox } from '@/app/ui/forms/choices';
import { SubmitButton } from '@/app/ui/forms/submit';
import { PageHead } from '@/app/ui/page/page-head';
import { TextLink } from '@/app/ui/page/text-link';
import { requireStaff } from '@/app/workshop/who';
import { jobByNumber } from '@/lib/jobs/job-by-number';
import type { JobRecord } from '@/lib/jobs/records';
import { addressFieldsOf } from '@/lib/jobs/rules/address';
import { showNumber } from '@/lib/numbers/job-number';
import { quoteByNumber } from '@/lib/quotes/quote-by-number';
import type { QuoteRecord } from '@/lib/quotes/records';
import { countryChoices } from '@/lib/workshop/places';
import { numberedTitle } from '../../../numbered-title';
import { correct, correctWhoAsked } from './actions';

export const generateMetadata = numberedTitle('Correct the contact');

/** The contact of a job's customer, or of whoever asked for a price at which no job was booked. */
export default async function ContactPage({ params }: { params: Promise<{ number: string }> }) {
  await requireStaff('take-in');
  const { number } = await params;
  const quote = await quoteByNumber(number);
  if (quote?.job) redirect(`/workshop/customers/${quote.job.number}/contact`);
  if (quote) return <OfQuote quote={quote} />;
  const job = await jobByNumber(number);
  if (!job || job.customer.erasedAt) nothingHere();
  return <OfJob job={job} />;
}

async function OfJob({ job }: { job: JobRecord }) {
  const { customer } = job;
  const { locale } = await readWorkshop();
  return (
    <>
      <PageHead
        above={<TextLink href={`/workshop/jobs/${job.number}`}>{`Job ${showNumber(job.number)}`}</TextLink>}
        title="Correct the contact"
        lead="The customer’s name and contact details, and the return address."
      />
      <ActionForm
        action={correct.bind(null, job.number)}
        hidden={{ version: job.version }}
        label="Contact of the customer"
      >
        <AddressFields
          of="customer"
          countries={countryChoices(locale)}
          defaults={{ ...customer, ...addressFieldsOf(customer.addressLines) }}
        />
        <NewLinkBox />
        <SubmitButton
          label="Save the contact"
          consequence="Letters that have not left or that came back go to the new address; send those again from the job sheet. Invoices already issued keep what they say."
        />
      </ActionForm>
    </>
  );
}

function OfQuote({ quote }: { quote: QuoteRecord }) {
  const { request } = quote;
  if (request.email === '') nothingHere();
  return (
    <>
      <PageHead
        above={
          <TextLink href={`/workshop/quotes/${quote.number}`}>{`Quote ${showNumber(quote.number)}`}</TextLink>
        }
        title="Correct the contact"
        lead="The name and contact details of whoever asked for this price."
      />
      <ActionForm
        action={correctWhoAsked.bind(null, quote.number)}
        hidden={{ version: quote.version }}
        label="Contact of the customer"
      >
        <PersonFields of="customer" defaults={request} />
        <NewLinkBox />
        <SubmitButton
          label="Save the contact"
          consequence="Letters that have not left or that came back go to the new address; send those again under Mail."
        />
      </ActionForm>
    </>
  );
}

/** Ticked: a slip that reaches somebody does not come back, and whoever has the link reads the page and answers on it. */
function NewLinkBox() {
  return (
    <Checkbox
      name="newLink"
      label="If the e-mail changes, send a new private link there"
      hint="Links sent to the old address stop working. Leave it ticked unless you know that only the customer reads both."
      defaultChecked
    />
  );
}
