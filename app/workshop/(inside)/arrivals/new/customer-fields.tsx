import { Select } from '@/app/ui/forms/select';
import { TextField } from '@/app/ui/forms/text-field';

type Known = Record<'name' | 'email' | 'phone' | 'address1' | 'address2' | 'postcode' | 'town', string>;

type Props = {
  countries: readonly { value: string; label: string }[];
  country: string;
  emailHint: string;
  /** what we have of them, to be compared with the letter or with what they say */
  known?: Known | undefined;
};

/** Whose parcel it is: nothing is offered from what the browser knows of whoever types. */
export function CustomerFields({ countries, country, emailHint, known }: Props) {
  return (
    <>
      <TextField name="name" label="Name" maxLength={120} autoComplete="off" defaultValue={known?.name} />
      <TextField
        name="email"
        label="E-mail address"
        hint={emailHint}
        type="email"
        maxLength={254}
        autoComplete="off"
        defaultValue={known?.email}
      />
      <TextField
        name="phone"
        label="Telephone"
        optional
        type="tel"
        maxLength={40}
        autoComplete="off"
        defaultValue={known?.phone}
      />
      <TextField
        name="address1"
        label="Street and number"
        maxLength={120}
        autoComplete="off"
        defaultValue={known?.address1}
      />
      <TextField
        name="address2"
        label="Second address line"
        optional
        maxLength={120}
        autoComplete="off"
        defaultValue={known?.address2}
      />
      <TextField
        name="postcode"
        label="Postcode"
        width="short"
        maxLength={20}
        autoComplete="off"
        defaultValue={known?.postcode}
      />
      <TextField name="town" label="Town" maxLength={80} autoComplete="off" defaultValue={known?.town} />
      <Select name="country" label="Country" choices={countries} defaultValue={country} />
    </>
  );
}
