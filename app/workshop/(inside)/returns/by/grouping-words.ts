import type { Grouping } from '@/lib/returns/groupings';

type Words = {
  title: string;
  /** what one of them is */
  one: string;
  /** what counts as a return here */
  counted: string;
  empty: string;
};

const ALL_CAUSES = 'Every claim ruled covered counts, whatever its cause.';
const PARTS =
  'Only claims put down to the part count, against the parts that were fitted again under the claim; where none of those that the symptom may belong to was, against all of them. A unit that first came back for another cause ends its watch and counts as none. Two pieces in one unit are one chance to come back.';

export const GROUPING_WORDS: Record<Grouping, Words> = {
  repair: {
    title: 'Returns by repair',
    one: 'Repair',
    counted: ALL_CAUSES,
    empty: 'No unit was sent back yet.',
  },
  model: {
    title: 'Returns by model',
    one: 'Model',
    counted: ALL_CAUSES,
    empty: 'No unit was sent back yet.',
  },
  policy: {
    title: 'Returns by policy',
    one: 'Policy',
    counted: ALL_CAUSES,
    empty: 'No unit was sent back yet.',
  },
  part: {
    title: 'Returns by part',
    one: 'Part',
    counted: PARTS,
    empty: 'No part has gone out in a unit yet.',
  },
  lot: {
    title: 'Returns by lot',
    one: 'Lot',
    counted: `${PARTS} A lot is compared with the other lots of its part, or with all others where its part has no other.`,
    empty: 'No part of a lot has gone out in a unit yet.',
  },
  supplier: {
    title: 'Returns by supplier',
    one: 'Supplier',
    counted: PARTS,
    empty: 'No part has gone out in a unit yet.',
  },
  technician: {
    title: 'Returns by who did the work',
    one: 'Person',
    counted:
      'Only claims put down to our work, or to damage that was not found, count; a unit that first came back for another cause ends its watch and counts as none. A unit belongs to whoever worked on it longest.',
    empty: 'No unit was sent back yet.',
  },
};
