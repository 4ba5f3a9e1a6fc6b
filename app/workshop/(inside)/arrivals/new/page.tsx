import type { Metadata } from 'next';
import { newFormKey } from '@/app/form-key';
import { readWorkshop } from '@/app/read-workshop';
import { ActionForm } from '@/app/ui/forms/action-form';
import { AddressFields } from '@/app/ui/forms/address-fields';
import { Checkbox, RadioGroup } from '@/app/ui/forms/choices';
import { FileField } from '@/app/ui/forms/file-field';
import { Select } from '@/app/ui/forms/select';
import { SubmitButton } from '@/app/ui/forms/submit';
import { TextArea } from '@/app/ui/forms/text-area';
import { TextField } from '@/app/ui/forms/text-field';
import { EmptyState } from '@/app/ui/page/empty-state';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { TextLink } from '@/app/ui/page/text-link';
import { requireStaff } from '@/app/workshop/who';
import { cautionOf } from '@/lib/bench/rules/cautions';
import { MOST_PHOTOS } from '@/lib/jobs/rules/most-photos';
import { type WalkInRepair, walkInRepairs } from '@/lib/jobs/walk-in-repairs';
import { may } from '@/lib/people/rules/roles';
import type { WorkshopCard } from '@/lib/workshop/card';
import { countryChoices } from '@/lib/workshop/places';
import { takesBookings } from '@/lib/workshop/rules/missing-settings';
import { MissingNotice } from '../../missing-notice';
import { openForParcel } from './actions';

export const metadata: Metadata = { title: 'A parcel without a booking' };

export default async function WalkInPage() {
  const who = await requireStaff('take-in');
  const mayFillIn = may(who.role, 'settings');
  const [repairs, workshop] = await Promise.all([walkInRepairs(), readWorkshop()]);
  const cell = cautionOf('lithium-cells');
  return (
    <>
      <PageHead
        above={<TextLink href="/workshop/arrivals">Arrivals</TextLink>}
        title="A parcel without a booking"
        lead="Opens a job for it. The customer has agreed to nothing yet: the price is asked for on their private page, and no repair starts before their yes."
      />
      {cell ? (
        <Notice kind="warn" heading={cell.title}>
          <p>{cell.text}</p>
        </Notice>
      ) : null}
      <MissingNotice workshop={workshop} mayFillIn={mayFillIn} stopped="booking" />
      {repairs.length === 0 ? <NoRepairs mayFillIn={mayFillIn} /> : null}
      {repairs.length > 0 && takesBookings(workshop) ? (
        <WalkInForm repairs={repairs} workshop={workshop} />
      ) : null}
    </>
  );
}

/** A job stands under a repair of the catalogue: its check sheet proves the unit. */
function NoRepairs({ mayFillIn }: { mayFillIn: boolean }) {
  return (
    <EmptyState>
      A job needs a repair of the catalogue, and there is none yet.{' '}
      {mayFillIn ? (
        <TextLink href="/workshop/catalogue">Add a family, a model and its repair</TextLink>
      ) : (
        'The owner adds it under Catalogue. Keep the parcel closed until then.'
      )}
    </EmptyState>
  );
}

type FormProps = { repairs: readonly WalkInRepair[]; workshop: WorkshopCard };

function WalkInForm({ repairs, workshop: { locale, country } }: FormProps) {
  return (
    <ActionForm action={openForParcel} hidden={{ formKey: newFormKey() }} label="A parcel without a booking">
      <h2>The unit</h2>
      <Select
        name="repair"
        label="Unit and repair"
        hint="The repair that fits best. It can be put under another once somebody has looked; the price is asked for."
        empty="Choose one"
        choices={repairs.map((each) => ({ value: each.id, label: each.repair, group: each.unit }))}
      />
      <TextField
        name="serial"
        label="Serial, as read from the unit"
        mono
        autoComplete="off"
        width="half"
        maxLength={60}
        scan
      />
      <Checkbox
        name="isOther"
        label="Cover runs on it, and it came for something else"
        hint="Only asked where a certificate covers this serial. Anything it may cover is a claim, free of charge."
      />
      <TextArea
        name="problem"
        label="What the letter says"
        hint="In the customer’s own words, or that there was no letter."
        rows={4}
        maxLength={2000}
      />
      <TextArea
        name="extra"
        label="What came with the unit"
        hint="One thing to a line, or with commas. The customer is told."
        optional
        rows={3}
        maxLength={2000}
      />
      <RadioGroup
        name="battery"
        label="Battery"
        choices={[
          { value: 'healthy', label: 'In it, and nothing odd about it' },
          { value: 'none', label: 'No battery in the parcel' },
          { value: 'unknown', label: 'Swollen, leaking, hot or wet, or nobody can tell' },
        ]}
      />
      <FileField
        name="photos"
        label="Photos of its condition"
        hint="The letter too. A phone offers its camera."
        optional
        most={MOST_PHOTOS}
      />
      <h2>The customer</h2>
      <AddressFields
        of="customer"
        countries={countryChoices(locale)}
        defaults={{ country }}
        emailHint="The private page and the price go there. None in the parcel? Write or call before you open a job."
      />
      <SubmitButton
        label="Open the job and take it in"
        busy="Opening…"
        consequence="Writes to the customer that the parcel is here without a booking, with their private page. Nothing is agreed by this."
      />
    </ActionForm>
  );
}
