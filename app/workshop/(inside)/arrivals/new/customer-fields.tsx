import { Select } from '@/app/ui/forms/select';
import { TextField } from '@/app/ui/forms/text-field';

type Props = { countries: readonly { value: string; label: string }[]; country: string };

/** Whose parcel it is, typed from the letter: nothing is offered from what the browser knows of whoever types. */
export function CustomerFields({ countries, country }: Props) {
  return (
    <>
      <TextField name="name" label="Name" maxLength={120} autoComplete="off" />
      <TextField
        name="email"
        label="E-mail address"
        hint="The private page and the price go there. None in the parcel? Write or call before you open a job."
        type="email"
        maxLength={254}
        autoComplete="off"
      />
      <TextField name="phone" label="Telephone" optional type="tel" maxLength={40} autoComplete="off" />
      <TextField name="address1" label="Street and number" maxLength={120} autoComplete="off" />
      <TextField name="address2" label="Second address line" optional maxLength={120} autoComplete="off" />
      <TextField name="postcode" label="Postcode" width="short" maxLength={20} autoComplete="off" />
      <TextField name="town" label="Town" maxLength={80} autoComplete="off" />
      <Select name="country" label="Country" choices={countries} defaultValue={country} />
    </>
  );
}
