import { Select } from './select';
import { TextField } from './text-field';

type Address = {
  name: string;
  email: string;
  phone: string;
  address1: string;
  address2: string;
  postcode: string;
  town: string;
  country: string;
};

type Props = {
  countries: readonly { value: string; label: string }[];
  defaults?: Partial<Address> | undefined;
};

/** Name and return address; browsers and phones fill it in by themselves (WCAG 2.2 success criterion 1.3.5). */
export function AddressFields({ countries, defaults }: Props) {
  return (
    <>
      <TextField
        name="name"
        label="Your name"
        autoComplete="name"
        maxLength={120}
        defaultValue={defaults?.name}
      />
      <TextField
        name="email"
        label="E-mail address"
        hint="We write only about this unit."
        type="email"
        autoComplete="email"
        maxLength={254}
        defaultValue={defaults?.email}
      />
      <TextField
        name="phone"
        label="Telephone"
        hint="The carrier may ask for it."
        optional
        type="tel"
        autoComplete="tel"
        maxLength={40}
        defaultValue={defaults?.phone}
      />
      <TextField
        name="address1"
        label="Street and number"
        autoComplete="address-line1"
        maxLength={120}
        defaultValue={defaults?.address1}
      />
      <TextField
        name="address2"
        label="Second address line"
        optional
        autoComplete="address-line2"
        maxLength={120}
        defaultValue={defaults?.address2}
      />
      <TextField
        name="postcode"
        label="Postcode"
        autoComplete="postal-code"
        width="short"
        maxLength={20}
        defaultValue={defaults?.postcode}
      />
      <TextField
        name="town"
        label="Town"
        autoComplete="address-level2"
        maxLength={80}
        defaultValue={defaults?.town}
      />
      <Select
        name="country"
        label="Country"
        autoComplete="country"
        choices={countries}
        defaultValue={defaults?.country ?? countries[0]?.value}
      />
    </>
  );
}
