import type { AddressAnswers } from '@/lib/jobs/rules/address';
import { Select } from './select';
import { TextField } from './text-field';

type PersonProps = {
  /** staff fill it in for a customer: then nothing is offered of what the browser knows of whoever types */
  of?: 'you' | 'customer';
  emailHint?: string | undefined;
  defaults?: Partial<AddressAnswers> | undefined;
};

/** How somebody is called and reached; browsers and phones fill it in by themselves (WCAG 2.2 success criterion 1.3.5). */
export function PersonFields({ of = 'you', emailHint, defaults }: PersonProps) {
  const isOwn = of === 'you';
  return (
    <>
      <TextField
        name="name"
        label={isOwn ? 'Your name' : 'Name'}
        autoComplete={isOwn ? 'name' : 'off'}
        maxLength={120}
        defaultValue={defaults?.name}
      />
      <TextField
        name="email"
        label="E-mail address"
        hint={isOwn ? 'We write only about this unit.' : emailHint}
        type="email"
        autoComplete={isOwn ? 'email' : 'off'}
        maxLength={254}
        defaultValue={defaults?.email}
      />
      <TextField
        name="phone"
        label="Telephone"
        hint={isOwn ? 'The carrier may ask for it.' : undefined}
        optional
        type="tel"
        autoComplete={isOwn ? 'tel' : 'off'}
        maxLength={40}
        defaultValue={defaults?.phone}
      />
    </>
  );
}

type Props = PersonProps & { countries: readonly { value: string; label: string }[] };

/** The same with the return address. */
export function AddressFields({ countries, ...person }: Props) {
  const { of = 'you', defaults } = person;
  const isOwn = of === 'you';
  return (
    <>
      <PersonFields {...person} />
      <TextField
        name="address1"
        label="Street and number"
        autoComplete={isOwn ? 'address-line1' : 'off'}
        maxLength={120}
        defaultValue={defaults?.address1}
      />
      <TextField
        name="address2"
        label="Second address line"
        optional
        autoComplete={isOwn ? 'address-line2' : 'off'}
        maxLength={120}
        defaultValue={defaults?.address2}
      />
      <TextField
        name="postcode"
        label="Postcode"
        autoComplete={isOwn ? 'postal-code' : 'off'}
        width="short"
        maxLength={20}
        defaultValue={defaults?.postcode}
      />
      <TextField
        name="town"
        label="Town"
        autoComplete={isOwn ? 'address-level2' : 'off'}
        maxLength={80}
        defaultValue={defaults?.town}
      />
      <Select
        name="country"
        label="Country"
        autoComplete={isOwn ? 'country' : 'off'}
        choices={countries}
        defaultValue={defaults?.country ?? countries[0]?.value}
      />
    </>
  );
}
