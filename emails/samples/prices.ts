import { day } from '@/lib/calendar/day';
import { claimJob, inspectionJob, quoteJob, type Sample } from './sample';

/** What is written about prices: asked for, sent, changed, agreed and lapsed. */
export const priceSamples: readonly Sample[] = [
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
    name: 'Approval asked, after an inspection',
    content: {
      template: 'approval-asked',
      data: {
        revision: 2,
        reason: 'The left output stage is open. We would build it anew.',
        previousGross: 1800,
        gross: 6000,
        returnFee: 960,
        inspectionFee: 1800,
        validUntil: day('2027-01-02'),
        isAfterInspection: true,
      },
    },
    job: inspectionJob,
  },
  {
    name: 'Approval asked, after an inspection, reminder',
    content: {
      template: 'offer-reminder',
      data: {
        revision: 2,
        gross: 6000,
        returnFee: 960,
        inspectionFee: 1800,
        validUntil: day('2027-01-02'),
        isAfterInspection: true,
      },
    },
    job: inspectionJob,
  },
  {
    name: 'Approval asked, after an inspection, no answer came',
    content: {
      template: 'offer-lapsed',
      data: { revision: 2, gross: 6000, validUntil: day('2027-01-02'), isAfterInspection: true },
    },
    job: inspectionJob,
  },
  {
    name: 'Approval recorded: yes, after an inspection',
    content: {
      template: 'approval-recorded',
      data: { revision: 2, decision: 'accepted', gross: 6000, isAfterInspection: true },
    },
    job: { agreed: 6000 },
  },
  {
    name: 'Approval asked, reminder',
    content: {
      template: 'offer-reminder',
      data: { revision: 2, gross: 13150, returnFee: 1200, validUntil: day('2027-01-02') },
    },
  },
  {
    name: 'Approval asked, the first price, reminder',
    content: {
      template: 'offer-reminder',
      data: { revision: 2, gross: 6000, returnFee: 0, validUntil: day('2027-01-02'), isFirst: true },
    },
    job: { agreed: 0, isPriceOpen: true, promisedOn: null },
  },
  {
    name: 'Approval asked, the first price, no answer came',
    content: {
      template: 'offer-lapsed',
      data: { revision: 2, gross: 6000, validUntil: day('2027-01-02'), isFirst: true },
    },
    job: { agreed: 0, isPriceOpen: true, promisedOn: null },
  },
  {
    name: 'Approval recorded: yes, while the right to withdraw runs',
    content: {
      template: 'approval-recorded',
      data: { revision: 2, decision: 'accepted', gross: 13150, startAfter: day('2026-12-15') },
    },
    job: { agreed: 13150, promisedOn: day('2026-12-22') },
  },
  {
    name: 'Approval asked, no answer came',
    content: {
      template: 'offer-lapsed',
      data: { revision: 2, gross: 13150, validUntil: day('2027-01-02') },
    },
  },
  {
    name: 'Approval asked, and the price taken back',
    content: {
      template: 'price-taken-back',
      data: {
        revision: 2,
        gross: 13150,
        reason: 'The second pad is sound after all. We work the price out again.',
        heldUntil: day('2027-01-02'),
      },
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
    name: 'Approval recorded: yes, told by telephone',
    content: {
      template: 'approval-recorded',
      data: {
        revision: 2,
        decision: 'accepted',
        gross: 13150,
        told: { how: 'telephone', on: day('2026-12-03'), words: 'Yes, go ahead. Ring me if it gets dearer.' },
      },
    },
    job: { agreed: 13150 },
  },
  {
    name: 'Approval recorded: yes, told before the price lapsed',
    content: {
      template: 'approval-recorded',
      data: {
        revision: 2,
        decision: 'accepted',
        gross: 13150,
        promise: {
          from: day('2026-12-18'),
          to: day('2026-12-14'),
          reason: 'Your answer had come in time: the job waited 1 working day for it.',
        },
        told: { how: 'telephone', on: day('2026-12-03'), words: 'Yes, go ahead. Ring me if it gets dearer.' },
        hadLapsed: true,
        wasReady: true,
      },
    },
    job: { agreed: 13150 },
  },
  {
    name: 'Approval recorded: yes, told before the price lapsed, of a unit that waits for a part',
    content: {
      template: 'approval-recorded',
      data: {
        revision: 2,
        decision: 'accepted',
        gross: 13150,
        told: { how: 'letter', on: day('2026-12-03'), words: 'Yes, please go ahead.' },
        hadLapsed: true,
        waitsForPart: true,
      },
    },
    job: { agreed: 13150 },
  },
  {
    name: 'Approval recorded: no, told before the price lapsed',
    content: {
      template: 'approval-recorded',
      data: {
        revision: 2,
        decision: 'declined',
        gross: 1200,
        told: { how: 'letter', on: day('2026-12-03'), words: 'Please send it back as it is.' },
        hadLapsed: true,
      },
    },
    job: { agreed: 1200, isRepaired: false },
  },
  {
    name: 'Approval recorded: no, told in person',
    content: {
      template: 'approval-recorded',
      data: {
        revision: 2,
        decision: 'declined',
        gross: 1200,
        yesUntil: day('2026-12-27'),
        told: { how: 'in-person', on: day('2026-12-03'), words: 'Too dear for me.' },
      },
    },
    job: { agreed: 1200, isRepaired: false },
  },
  {
    name: 'Approval recorded: no to the rest of a claim, told by e-mail',
    content: {
      template: 'approval-recorded',
      data: {
        revision: 2,
        decision: 'rest-declined',
        gross: 0,
        told: { how: 'e-mail', on: day('2026-12-03'), words: 'Leave the display as it is.' },
      },
    },
    job: claimJob,
  },
  {
    name: 'Approval recorded: yes, paid before',
    content: {
      template: 'approval-recorded',
      data: {
        revision: 2,
        decision: 'accepted',
        gross: 13150,
        balance: 4250,
        replaced: { credited: ['2026-00042'], invoice: { number: '2026-00044', dueOn: day('2026-12-23') } },
      },
    },
    job: { agreed: 13150 },
  },
  {
    name: 'Approval recorded: no, paid before',
    content: {
      template: 'approval-recorded',
      data: {
        revision: 2,
        decision: 'declined',
        gross: 1200,
        balance: -7700,
        replaced: { credited: ['2026-00042'], invoice: { number: '2026-00044' } },
      },
    },
    job: { agreed: 1200, isRepaired: false },
  },
  {
    name: 'Approval recorded: no, while the price is held',
    content: {
      template: 'approval-recorded',
      data: { revision: 2, decision: 'declined', gross: 1200, yesUntil: day('2026-12-27') },
    },
    job: { agreed: 1200, isRepaired: false },
  },
  {
    name: 'Approval recorded: yes after a no',
    content: {
      template: 'approval-recorded',
      data: { revision: 4, decision: 'accepted', gross: 13150, afterNoTo: 2 },
    },
    job: { agreed: 13150 },
  },
  {
    name: 'Approval recorded: yes after a no, after an inspection',
    content: {
      template: 'approval-recorded',
      data: { revision: 4, decision: 'accepted', gross: 6000, afterNoTo: 2, isAfterInspection: true },
    },
    job: { agreed: 6000 },
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
    name: 'Price of an inspection sent',
    content: {
      template: 'quote-sent',
      data: { revision: 1, gross: 1800, validUntil: day('2026-12-27'), workingDays: 6, isInspection: true },
    },
    job: quoteJob,
  },
  {
    name: 'Price of an inspection lapses soon',
    content: {
      template: 'quote-reminder',
      data: { revision: 1, gross: 1800, validUntil: day('2026-12-27'), isInspection: true },
    },
    job: quoteJob,
  },
  {
    name: 'Price of an inspection accepted',
    content: { template: 'quote-accepted', data: { revision: 1, gross: 1800, isInspection: true } },
    job: quoteJob,
  },
  {
    name: 'Price accepted',
    content: { template: 'quote-accepted', data: { revision: 1, gross: 7450 } },
    job: quoteJob,
  },
  { name: 'Price declined', content: { template: 'quote-declined', data: { revision: 1 } }, job: quoteJob },
  {
    name: 'Price declined while it is held',
    content: { template: 'quote-declined', data: { revision: 1, yesUntil: day('2026-12-27') } },
    job: quoteJob,
  },
  {
    name: 'Price lapsed',
    content: { template: 'quote-lapsed', data: { revision: 1, validUntil: day('2026-12-27') } },
    job: quoteJob,
  },
  {
    name: 'Price of an inspection lapsed',
    content: {
      template: 'quote-lapsed',
      data: { revision: 1, validUntil: day('2026-12-27'), isInspection: true },
    },
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
  {
    name: 'Quote closed',
    content: {
      template: 'quote-turned-down',
      data: { text: 'You asked us to close it. Write to us if you change your mind.', hadPrice: true },
    },
    job: quoteJob,
  },
];
