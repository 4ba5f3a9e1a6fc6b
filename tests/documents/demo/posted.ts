import { day } from '@/lib/calendar/day';
import type { BagLabelData, LabelSetting } from '@/lib/documents/bag-label';
import type { CustomsNoteData } from '@/lib/documents/customs-note';
import type { PackingSlipData } from '@/lib/documents/packing-slip';
import { customsNote } from '@/lib/parcels/rules/customs-note';
import { advice, customer, job, setting, stamp, statusUrl, unit, verdict, workshop } from './shared';

export const slip: PackingSlipData = {
  setting,
  workshop,
  job,
  bookedOn: day('2026-12-03'),
  statusUrl,
  unit,
  repair: 'Replace the USB socket and test charging',
  certificate: null,
  from: [customer, '17 Lantern Row', 'Otterby OT2 9LN'],
  stamps: [
    stamp('Booked', '2026-12-03'),
    stamp('Arrived', null),
    stamp('On the bench', null),
    stamp('Proved', null),
    stamp('Sent back', null),
  ],
  include: advice.include,
  leaveOut: advice.leaveOut,
  pack: advice.pack,
  outside: advice.outside,
  battery: {
    sentences: verdict.reasons,
    caution: 'Do not post it if the battery is swollen, hot, leaking, wet or recalled. Write to us first.',
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
      cost: '£64.00 in all, postage back included',
    },
  ],
};

export const label: BagLabelData = { job, code: statusUrl, ...unit };

export const labelSetting: LabelSetting = {
  workshop: workshop.name,
  locale: setting.locale,
  made: setting.made,
};

export const customs: CustomsNoteData = {
  setting,
  workshop,
  job,
  jobUrl: `https://quay-alder.example.org/workshop/jobs/${job}`,
  unit,
  note: customsNote({
    sender: {
      name: workshop.name,
      address: workshop.address,
      country: 'United Kingdom (GB)',
      phone: '01632 960417',
      email: 'bench@quay-alder.example.org',
    },
    receiver: {
      name: customer,
      address: ['Marktgasse 3', '9470 Buchs'],
      country: 'Switzerland (CH)',
      phone: '',
      email: 'mira@example.org',
    },
    unit: unit.model,
    family: 'Field recorders',
    serial: unit.serial,
    isRepaired: true,
    isClaim: false,
    unitGrams: 420,
    parcelGrams: 980,
    valueMinor: 24_000,
    repairMinor: 13_060,
    currency: 'GBP',
    tariffNumber: '8519.81',
    battery: { kind: 'lithium-ion', wattHours: 7.4, packed: 'fitted' },
    reference: 'J-CE9S-AWRW',
    invoice: '2026-0148',
  }),
};
