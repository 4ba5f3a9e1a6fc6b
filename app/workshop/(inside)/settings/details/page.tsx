import type { Metadata } from 'next';
import { readWorkshop } from '@/app/read-workshop';
import { Select } from '@/app/ui/forms/select';
import { TextArea } from '@/app/ui/forms/text-area';
import { TextField } from '@/app/ui/forms/text-field';
import { PageHead } from '@/app/ui/page/page-head';
import { TextLink } from '@/app/ui/page/text-link';
import { countryChoices } from '@/lib/workshop/places';
import { PLACEHOLDER_NAME } from '@/lib/workshop/rules/missing-settings';
import { requireStaff } from '../../../who';
import { saveDetails } from '../actions';
import { SettingsForm } from '../settings-form';

export const metadata: Metadata = { title: 'Details of the workshop' };

export default async function DetailsPage() {
  await requireStaff('settings');
  const workshop = await readWorkshop();
  return (
    <>
      <PageHead
        above={<TextLink href="/workshop/settings">Settings</TextLink>}
        title="Details of the workshop"
      />
      <SettingsForm
        action={saveDetails}
        workshop={workshop}
        save="Save details"
        consequence="Stands on every page, e-mail and document made from now on."
      >
        <TextField
          name="name"
          label="Name"
          defaultValue={workshop.name === PLACEHOLDER_NAME ? '' : workshop.name}
          autoComplete="organization"
        />
        <TextField
          name="tagline"
          label="Line under the name"
          optional
          defaultValue={workshop.tagline}
          autoComplete="off"
        />
        <TextArea
          name="addressLines"
          label="Address for parcels"
          hint="One line each, as on a label, without town and postcode."
          defaultValue={workshop.addressLines.join('\n')}
          rows={3}
        />
        <TextField name="town" label="Town" width="half" defaultValue={workshop.town} />
        <TextField name="postcode" label="Postcode" width="short" optional defaultValue={workshop.postcode} />
        <Select
          name="country"
          label="Country"
          width="half"
          choices={countryChoices(workshop.locale)}
          defaultValue={workshop.country}
        />
        <TextField
          name="email"
          label="Address for customers’ mail"
          type="email"
          width="half"
          defaultValue={workshop.email}
        />
        <TextField
          name="phone"
          label="Telephone"
          type="tel"
          width="half"
          optional
          defaultValue={workshop.phone}
        />
        <TextField
          name="territory"
          label="Where certificates hold good"
          hint="In words, like “the United Kingdom and Ireland”. A certificate has to say it."
          defaultValue={workshop.territory}
          autoComplete="off"
        />
      </SettingsForm>
    </>
  );
}
