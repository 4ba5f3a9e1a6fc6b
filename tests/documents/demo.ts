import { day } from '@/lib/calendar/day';
import type { Setting, Workshop } from '@/lib/documents/kit/page';
import type { PackingSlipData } from '@/lib/documents/packing-slip';

export const setting: Setting = { paper: 'A4', locale: 'en-GB', made: new Date('2026-12-03T10:15:00Z') };

export const workshop: Workshop = {
  name: 'Quay & Alder',
  address: ['4 Ropewalk Yard', 'Sandmouth', 'SM4 7QY'],
  phone: '01632 960417',
  email: 'bench@quay-alder.example.org',
};

export const slip: PackingSlipData = {
  setting,
  workshop,
  job: 'J4K7QX290',
  bookedOn: day('2026-12-03'),
  statusUrl: 'https://quay-alder.example.org/track/J4K7QX290',
  unit: { model: 'Tidewater FR-2 field recorder', serial: 'TW2-0O51-18B' },
  repair: 'Replace the USB socket and test charging',
  certificate: null,
  from: ['Mira Oakenfold', '17 Lantern Row', 'Otterby OT2 9LN'],
  stamps: [
    { label: 'Booked', day: day('2026-12-03') },
    { label: 'Arrived', day: null },
    { label: 'On the bench', day: null },
    { label: 'Proved', day: null },
    { label: 'Sent back', day: null },
  ],
  include: [
    'The recorder, with its battery door closed',
    'This slip, on top',
    'The wind shield you told us about',
  ],
  leaveOut: [
    'Cables and chargers',
    'Memory cards and personal recordings, unless we asked for them',
    'Original boxes you want to keep',
  ],
  pack: [
    'Wrap the unit in two turns of bubble wrap and tape it shut.',
    'Use a box with 5 cm of soft filling on every side. The unit must not move when you shake the box.',
    'Put this slip on top, close the box and stick the label on the widest side.',
    'Ask for a receipt at the counter and keep it until we write that the parcel is here.',
  ],
  battery: {
    sentence:
      'Your unit holds a lithium-ion battery of 7.4 Wh. Leave it in the unit and switch the unit off. It may travel by road.',
    caution:
      'Do not post a battery that is swollen, hot, leaking or damaged. Call us first. The carrier’s terms and local rules come first.',
  },
  next: [
    { what: 'You post the parcel', when: 'By Thursday 17 December', cost: 'Your postage to us' },
    {
      what: 'We look at it and write to you',
      when: 'Two working days after it arrives',
      cost: 'Nothing more',
    },
    {
      what: 'We repair, prove and post it back',
      when: 'By Thursday 7 January',
      cost: '£64.00 in all, return postage included',
    },
  ],
};
