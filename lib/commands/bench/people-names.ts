import type { Chance } from './chance';

// Invented people, as in the demonstration; mail at the reserved example domains.
const FIRST = [
  'Maren',
  'Idris',
  'Zofia',
  'Tamsin',
  'Bryn',
  'Ines',
  'Corin',
  'Odile',
  'Petra',
  'Ruaridh',
  'Sanna',
  'Tobin',
  'Una',
  'Viggo',
  'Wilmot',
  'Ysolde',
];
const LAST = [
  'Holt',
  'Vellacott',
  'Pell',
  'Oke',
  'Gallow',
  'Marlowe',
  'Tarn',
  'Quillfeather',
  'Rushmere',
  'Sallow',
  'Thrupp',
  'Umber',
  'Varley',
  'Winnow',
  'Yarrow',
  'Zennor',
];
const DOMAINS = ['example.org', 'example.com', 'example.net'];

export type Person = { name: string; email: string };

/** Somebody invented; the same place among them is always the same person. */
export function personAt(place: number): Person {
  const first = FIRST[place % FIRST.length] ?? 'Maren';
  const last = LAST[Math.floor(place / FIRST.length) % LAST.length] ?? 'Holt';
  const domain = DOMAINS[place % DOMAINS.length] ?? 'example.org';
  const name = `${first} ${last}`;
  return { name, email: `${first}.${last}.${place}@${domain}`.toLowerCase() };
}

/** Of so many jobs some are by people who have been here before. */
export function somebody(chance: Chance, jobs: number): Person {
  return personAt(chance.below(Math.ceil(jobs * 0.6)));
}

export const TECHNICIANS = [
  { name: 'Tamsin Oke', initials: 'TO' },
  { name: 'Bryn Gallow', initials: 'BG' },
  { name: 'Ines Marlowe', initials: 'IM' },
  { name: 'Corin Umber', initials: 'CU' },
] as const;
