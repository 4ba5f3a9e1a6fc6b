import { recallText } from '@/lib/bench/rules/recall-text';
import { day } from '@/lib/calendar/day';
import type { MailContent } from '@/lib/mail/rules/content';
import type { Setting } from './letter';

/** One way a message can read, for the samples page and for the tests. Everybody and everything in them is invented. */
export type Sample = {
  name: string;
  content: MailContent;
  job?: Partial<Setting['job']>;
  hasNoLink?: true;
  withdrawal?: 'asked' | 'not-asked';
};

export const sampleJob: Setting['job'] = {
  number: 'J-4K7Q-X290',
  kind: 'repair',
  unit: 'Marram Two',
  serial: 'MR2-0581-S',
  repair: 'Headphone socket replaced',
  agreed: 8900,
  customer: 'Ines Farrow',
  promisedOn: day('2026-12-09'),
  isRepaired: true,
  hasLithiumBattery: true,
};

const claimJob = { kind: 'claim', agreed: 0 } as const;
const quoteJob = {
  number: 'Q-5T8B-N3WZ',
  kind: 'quote',
  unit: 'Marram Two',
  serial: '',
  repair: '',
  agreed: 0,
  promisedOn: null,
  isRepaired: false,
} as const;
const claimNumber = 'C7TW3M9HB';
const certificateNumber = 'W2P8RN64K';

export const samples: readonly Sample[] = [
  { name: 'Booked', content: { template: 'job-booked', data: {} } },
  {
    name: 'Booked, with a right to withdraw',
    content: { template: 'job-booked', data: {} },
    withdrawal: 'not-asked',
  },
  {
    name: 'Booked, with a right to withdraw and an early start',
    content: { template: 'job-booked', data: {} },
    withdrawal: 'asked',
  },
  {
    name: 'Withdrawal recorded, nothing to pay',
    content: {
      template: 'withdrawal-recorded',
      data: { at: '3 Dec 2026, 14:05', owed: 0, refund: 0, isHere: false },
    },
    job: { agreed: 0, isRepaired: false },
  },
  {
    name: 'Withdrawal recorded, part of the work done',
    content: {
      template: 'withdrawal-recorded',
      data: { at: '3 Dec 2026, 14:05', owed: 2225, refund: 6675, isHere: true },
    },
    job: { agreed: 2225, isRepaired: false },
  },
  { name: 'Booked, free of charge', content: { template: 'job-booked', data: {} }, job: claimJob },
  {
    name: 'Cancelled',
    content: { template: 'job-cancelled', data: { reason: 'You asked us to on the job page.' } },
    job: { isRepaired: false },
  },
  {
    name: 'Arrived as booked',
    content: { template: 'unit-arrived', data: { promisedOn: day('2026-12-09'), differences: [] } },
  },
  {
    name: 'Arrived with differences, no date yet',
    content: {
      template: 'unit-arrived',
      data: {
        promisedOn: null,
        differences: ['Power supply: not in the parcel', 'Carrying strap: in the parcel, not in the booking'],
      },
    },
  },
  {
    name: 'Approval asked',
    content: {
      template: 'approval-asked',
      data: {
        revision: 2,
        reason:
          'Two traces beside the socket are torn off the board. A new socket alone would not hold. We would lay them again with enamelled wire.',
        previousGross: 8900,
        gross: 13150,
        returnFee: 1200,
        validUntil: day('2027-01-02'),
      },
    },
  },
  {
    name: 'Approval asked, with an inspection fee and more days',
    content: {
      template: 'approval-asked',
      data: {
        revision: 3,
        reason: 'The display cable is torn beside its plug. It has to be laid anew.',
        previousGross: 10700,
        gross: 13150,
        returnFee: 1200,
        inspectionFee: 1800,
        furtherDays: 2,
        validUntil: day('2027-01-02'),
      },
    },
  },
  {
    name: 'Approval asked, the first price',
    content: {
      template: 'approval-asked',
      data: {
        revision: 2,
        reason: 'The left output stage is open. We would build it anew.',
        previousGross: 0,
        gross: 6000,
        returnFee: 0,
        validUntil: day('2027-01-02'),
        isFirst: true,
      },
    },
    job: { agreed: 0, isPriceOpen: true, promisedOn: null },
  },
  {
    name: 'Approval asked, reminder',
    content: {
      template: 'offer-reminder',
      data: { revision: 2, gross: 13150, returnFee: 1200, validUntil: day('2027-01-02') },
    },
  },
  {
    name: 'Approval asked, no answer came',
    content: {
      template: 'offer-lapsed',
      data: { revision: 2, gross: 13150, validUntil: day('2027-01-02') },
    },
  },
  {
    name: 'Approval recorded: yes, and the promise moved',
    content: {
      template: 'approval-recorded',
      data: {
        revision: 2,
        decision: 'accepted',
        gross: 13150,
        promise: {
          from: day('2026-12-09'),
          to: day('2026-12-14'),
          reason: 'The job waited 2 working days for your answer. The extra work takes 1 working day more.',
        },
      },
    },
    job: { agreed: 13150, promisedOn: day('2026-12-14') },
  },
  {
    name: 'Approval recorded: no, after an inspection',
    content: {
      template: 'approval-recorded',
      data: { revision: 3, decision: 'declined', gross: 3000, inspectionFee: 1800 },
    },
    job: { agreed: 3000, isRepaired: false },
  },
  {
    name: 'Approval recorded: yes',
    content: { template: 'approval-recorded', data: { revision: 2, decision: 'accepted', gross: 13150 } },
    job: { agreed: 13150 },
  },
  {
    name: 'Approval recorded: no',
    content: { template: 'approval-recorded', data: { revision: 2, decision: 'declined', gross: 1200 } },
    job: { agreed: 1200, isRepaired: false },
  },
  {
    name: 'Approval asked for the rest of a claim',
    content: {
      template: 'approval-asked',
      data: {
        revision: 2,
        reason: 'The display cable is torn as well. That has nothing to do with the socket we fitted.',
        previousGross: 0,
        gross: 3400,
        returnFee: null,
        validUntil: day('2027-01-02'),
      },
    },
    job: claimJob,
  },
  {
    name: 'Approval recorded: yes to the first price',
    content: {
      template: 'approval-recorded',
      data: { revision: 2, decision: 'accepted', gross: 6000, isFirst: true },
    },
    job: { agreed: 6000 },
  },
  {
    name: 'Approval recorded: yes to the rest of a claim',
    content: { template: 'approval-recorded', data: { revision: 2, decision: 'accepted', gross: 3400 } },
    job: { kind: 'claim', agreed: 3400 },
  },
  {
    name: 'Approval recorded: no to the rest of a claim',
    content: { template: 'approval-recorded', data: { revision: 2, decision: 'rest-declined', gross: 0 } },
    job: claimJob,
  },
  {
    name: 'Promise moved',
    content: {
      template: 'promise-moved',
      data: {
        from: day('2026-12-09'),
        to: day('2026-12-14'),
        reason: 'The socket we ordered came with bent pins. A new one is on its way.',
      },
    },
    job: { promisedOn: day('2026-12-14') },
  },
  { name: 'Ready, something to pay', content: { template: 'unit-ready', data: { balance: 8900 } } },
  {
    name: 'Ready, with its invoice',
    content: {
      template: 'unit-ready',
      data: { balance: 8900, invoice: { number: '2026-00042', dueOn: day('2026-12-23') } },
    },
  },
  {
    name: 'Invoice',
    content: {
      template: 'invoice-issued',
      data: { number: '2026-00042', balance: 8900, dueOn: day('2026-12-23') },
    },
  },
  {
    name: 'Invoice, paid already',
    content: {
      template: 'invoice-issued',
      data: { number: '2026-00042', balance: 0, dueOn: day('2026-12-23') },
    },
  },
  {
    name: 'Credit note, money comes back',
    content: {
      template: 'credit-note-issued',
      data: {
        number: '2026-00043',
        invoice: '2026-00042',
        amount: 1000,
        reason: 'The knob we fitted was not the one we agreed on.',
        balance: -1000,
      },
    },
  },
  {
    name: 'Credit note, less to pay',
    content: {
      template: 'credit-note-issued',
      data: {
        number: '2026-00043',
        invoice: '2026-00042',
        amount: 1000,
        reason: 'The knob we fitted was not the one we agreed on.',
        balance: 7900,
      },
    },
  },
  {
    name: 'Payment received',
    content: { template: 'payment-received', data: { amount: 8900, balance: 0 } },
  },
  {
    name: 'Payment received, some left',
    content: { template: 'payment-received', data: { amount: 4000, balance: 4900 } },
  },
  {
    name: 'Money given back',
    content: { template: 'payment-received', data: { amount: -1000, balance: 0 } },
  },
  { name: 'Ready, nothing to pay', content: { template: 'unit-ready', data: { balance: 0 } }, job: claimJob },
  {
    name: 'Ready, unrepaired, paid too much',
    content: { template: 'unit-ready', data: { balance: -450 } },
    job: { isRepaired: false },
  },
  {
    name: 'Arrived without a booking',
    content: {
      template: 'unit-arrived',
      data: {
        promisedOn: null,
        differences: ['Strap came with it and is kept with the unit'],
        isUnbooked: true,
      },
    },
    job: { agreed: 0, isPriceOpen: true, promisedOn: null },
  },
  {
    name: 'Sent back with a certificate',
    content: {
      template: 'unit-sent-back',
      data: {
        carrier: 'Harbour Parcels',
        carrierReference: 'RR123456785GB',
        certificateNumber,
        revision: 1,
        tracking: 'https://parcels.example.org/where?ref=RR123456785GB',
      },
    },
  },
  {
    name: 'Sent back without a repair',
    content: {
      template: 'unit-sent-back',
      data: { carrier: 'Harbour Parcels', carrierReference: '', certificateNumber: null, revision: null },
    },
    job: { isRepaired: false },
  },
  {
    name: 'Claim opened',
    content: { template: 'claim-opened', data: { claimNumber, certificateNumber } },
    job: claimJob,
  },
  ...(
    [
      [
        'covered',
        'workmanship',
        'One of the joints that we made in March has cracked. It should have been made with more solder.',
      ],
      [
        'partly',
        'fitted-part',
        'The socket that we fitted has failed, which is ours to put right. The display cable is torn as well, on the other side of the unit.',
      ],
      [
        'not-covered',
        'damage-after-return',
        'Photo 3 shows a dent in the lower corner and a bent board under it. Neither is on the photos from the day we sent the unit back.',
      ],
      [
        'returned-free',
        'no-fault-found',
        'We played it for four hours on two pairs of headphones, moved the plug all the time and heard no dropout.',
      ],
    ] as const
  ).map(([ruling, cause, reasonText]): Sample => {
    const mayContest = ruling !== 'covered';
    return {
      name: `Claim ruled: ${ruling}`,
      content: { template: 'claim-ruled', data: { claimNumber, ruling, cause, reasonText, mayContest } },
      job: claimJob,
    };
  }),
  {
    name: 'Claim contested',
    content: {
      template: 'claim-contested',
      data: { claimNumber, text: 'The dent was there when I bought it.\nI have a photo from last summer.' },
    },
    job: claimJob,
  },
  {
    name: 'Message from the workshop',
    content: {
      template: 'message-from-workshop',
      data: {
        text: 'We found a memory card in the slot. Shall we leave it in, or post it back beside the unit?',
      },
    },
  },
  {
    name: 'Message from the workshop about a price',
    content: {
      template: 'message-from-workshop',
      data: { text: 'Yes, the price has the way back in it. You post it to us at your own cost.' },
    },
    job: quoteJob,
  },
  {
    name: 'Message from the customer',
    content: { template: 'message-from-customer', data: { text: 'Please leave the card in.\n\nThank you!' } },
  },
  { name: 'Price asked for', content: { template: 'quote-asked', data: {} }, job: quoteJob },
  { name: 'Added to a request', content: { template: 'quote-joined', data: {} }, job: quoteJob },
  {
    name: 'Question about a request',
    content: {
      template: 'quote-question',
      data: { text: 'Does the left channel drop out when you touch the plug, or also when it lies still?' },
    },
    job: quoteJob,
  },
  {
    name: 'Answer about a request',
    content: { template: 'quote-answered', data: { text: 'Only when I touch it.\nI sent one more photo.' } },
    job: quoteJob,
  },
  {
    name: 'Price sent',
    content: {
      template: 'quote-sent',
      data: { revision: 1, gross: 7450, validUntil: day('2026-12-27'), workingDays: 6 },
    },
    job: quoteJob,
  },
  {
    name: 'Price sent again',
    content: {
      template: 'quote-sent',
      data: { revision: 2, gross: 6900, validUntil: day('2026-12-30'), workingDays: 1 },
    },
    job: quoteJob,
  },
  {
    name: 'Price lapses soon',
    content: {
      template: 'quote-reminder',
      data: { revision: 1, gross: 7450, validUntil: day('2026-12-27') },
    },
    job: quoteJob,
  },
  {
    name: 'Price accepted',
    content: { template: 'quote-accepted', data: { revision: 1, gross: 7450 } },
    job: quoteJob,
  },
  { name: 'Price declined', content: { template: 'quote-declined', data: { revision: 1 } }, job: quoteJob },
  {
    name: 'Price lapsed',
    content: { template: 'quote-lapsed', data: { revision: 1, validUntil: day('2026-12-27') } },
    job: quoteJob,
  },
  {
    name: 'Request turned down',
    content: {
      template: 'quote-turned-down',
      data: { text: 'The chip in this unit is no longer made, and we found none that we trust.' },
    },
    job: quoteJob,
  },
  { name: 'Private address renewed', content: { template: 'link-renewed', data: {} } },
  {
    name: 'Certificate sent again',
    content: { template: 'certificate-copy', data: { certificateNumber, revision: 2 } },
  },
  {
    name: 'Letter about a lot, a cell',
    content: {
      template: 'lot-recall',
      data: {
        part: 'Lithium-ion cell, 2.5 Ah',
        lot: 'NB-0588',
        text: recallText({ part: 'Lithium-ion cell, 2.5 Ah' }),
      },
    },
    job: { isRepaired: true },
  },
  {
    name: 'Letter about a lot, a socket',
    content: {
      template: 'lot-recall',
      data: {
        part: 'USB-C socket, 16 pin',
        lot: 'HB-2611-04',
        text: recallText({ part: 'USB-C socket, 16 pin' }),
      },
    },
  },
  {
    name: 'Unclaimed, first notice',
    content: { template: 'unclaimed-notice', data: { notice: 1, lastDay: day('2027-02-26') } },
  },
  {
    name: 'Unclaimed, last notice',
    content: {
      template: 'unclaimed-notice',
      data: {
        notice: 3,
        lastDay: day('2027-04-09'),
        isLast: true,
        storage: 'We keep units on a dry shelf, free of charge, while we wait for an answer.',
      },
    },
  },
  {
    name: 'Unclaimed, kept longer',
    content: {
      template: 'unclaimed-decided',
      data: {
        told: 'We keep your unit longer.',
        note: 'A neighbour told us that you are at sea until June.',
        until: day('2027-06-30'),
      },
    },
  },
  {
    name: 'Unclaimed, recycled',
    content: {
      template: 'unclaimed-decided',
      data: {
        told: 'We have had your unit recycled, as the law here allows.',
        note: 'Announced for six weeks at our door, as the town asks.',
      },
    },
  },
  {
    name: 'Ready, every private address withdrawn',
    content: { template: 'unit-ready', data: { balance: 8900 } },
    hasNoLink: true,
  },
];

/** The setting of a sample in a workshop; the addresses lead to a job that does not exist. */
export function sampleSetting(sample: Sample, workshop: Setting['workshop'], appUrl: string): Setting {
  const isQuote = sample.job?.kind === 'quote';
  return {
    workshop,
    job: { ...sampleJob, ...sample.job },
    ...(sample.withdrawal && {
      withdrawal: {
        rule: 'uk',
        until: day('2026-12-15'),
        isStartAsked: sample.withdrawal === 'asked',
        page: `${appUrl}/withdrawal`,
      },
    }),
    link: sample.hasNoLink
      ? null
      : `${appUrl}/${isQuote ? 'quote' : 'job'}/sample-address-that-does-not-exist`,
    desk: `${appUrl}/workshop/${isQuote ? 'quotes/Q5T8BN3WZ' : 'jobs/J4K7QX290'}`,
  };
}
