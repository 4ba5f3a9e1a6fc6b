/** The staff of the demonstration, with the passwords its README gives away. */
export const staff = {
  owner: { email: 'owner@quayandalder.example.org', password: 'lantern-ferry-solder' },
  bench: { email: 'wren@quayandalder.example.org', password: 'capstan-flux-teacup' },
  front: { email: 'ottoline@quayandalder.example.org', password: 'parcel-string-beacon' },
} as const;

export type StaffRole = keyof typeof staff;
export const staffRoles: readonly StaffRole[] = ['owner', 'bench', 'front'];

export type Customer = {
  name: string;
  email: string;
  phone: string;
  street: string;
  postcode: string;
  town: string;
};

/** An invented customer whose mail nobody else gets: one for each walk. */
export function customer(walk: string): Customer {
  return {
    name: 'Ffion Trevarrack',
    email: `ffion.${walk}@example.net`,
    phone: '07700 900448',
    street: '9 Capstan Steps',
    postcode: 'QM2 1RX',
    town: 'Sandmouth',
  };
}
