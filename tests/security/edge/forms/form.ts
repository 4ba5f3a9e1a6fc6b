/** A form filled in as it should be, for a schema that something sent is read by. */
export type Form = {
  fields: Readonly<Record<string, string | readonly string[] | File>>;
  /** fields that are lists, as the action says them to parseForm */
  lists?: readonly string[];
};

/** Forms by the name of their schema, of each file in a folder. */
export type FormsOfFiles = readonly (readonly [file: string, forms: Record<string, Form>])[];

export const uuid = '7b1f6a52-0c0d-4f8e-9a57-3f8f0f6f2a11';
export const version = { version: '3' };
export const address = {
  name: 'Bryn Tolliver',
  email: 'bryn@example.net',
  phone: '+44 20 7946 0018',
  address1: '4 Sail Loft',
  address2: 'Rope Walk',
  postcode: 'QM3 4ZZ',
  town: 'Sandmouth',
  country: 'GB',
};
export const said = { text: 'The tape squeals when it is warm.' };
export const lines = 'One\nTwo';
