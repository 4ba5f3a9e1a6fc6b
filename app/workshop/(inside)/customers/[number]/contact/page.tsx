import type { Metadata } from 'next';
import { nothingHere } from '@/app/nothing-here';
import { readWorkshop } from '@/app/read-workshop';
import { ActionForm } from '@/app/ui/forms/action-form';
import { Select } from '@/app/ui/forms/select';
import { SubmitButton } from '@/app/ui/forms/submit';
import { TextField } from '@/app/ui/forms/text-field';
import { PageHead } from '@/app/ui/page/page-head';
import { TextLink } from '@/app/ui/page/text-link';
import { requireStaff } from '@/app/workshop/who';
import { jobByNumber } from '@/lib/jobs/job-by-number';
import { showNumber } from '@/lib/numbers/job-number';
import { rolesThatMay } from '@/lib/people/rules/roles';
import { countryChoices } from '@/lib/workshop/places';
import { correct } from './actions';

export const metadata: Metadata = { title: 'Correct the contact' };

export default async function ContactPage({ params }: { params: Promise<{ number: string }> }) {
  await requireStaff(rolesThatMay('take-in'));
  const job = await jobByNumber((await params).number);
  if (!job || job.customer.erasedAt) nothingHere();
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
        <TextField name="name" label="Name" maxLength={120} defaultValue={customer.name} autoComplete="off" />
        <TextField
          name="email"
          label="E-mail"
          type="email"
          maxLength={254}
          defaultValue={customer.email}
          autoComplete="off"
        />
        <TextField
          name="phone"
          label="Telephone"
          type="tel"
          optional
          maxLength={40}
          defaultValue={customer.phone}
          autoComplete="off"
        />
        <TextField
          name="address1"
          label="Street and number"
          maxLength={120}
          defaultValue={customer.addressLines[0]}
          autoComplete="off"
        />
        <TextField
          name="address2"
          label="Second address line"
          optional
          maxLength={120}
          defaultValue={customer.addressLines.slice(1).join(', ')}
          autoComplete="off"
        />
        <TextField
          name="postcode"
          label="Postcode"
          width="short"
          maxLength={20}
          defaultValue={customer.postcode}
          autoComplete="off"
        />
        <TextField name="town" label="Town" maxLength={80} defaultValue={customer.town} autoComplete="off" />
        <Select
          name="country"
          label="Country"
          choices={countryChoices(locale)}
          defaultValue={customer.country}
        />
        <SubmitButton
          label="Save the contact"
          consequence="Letters that have not left or that came back go to the new address; send those again from the job sheet. Invoices already issued keep what they say."
        />
      </ActionForm>
    </>
  );
}
