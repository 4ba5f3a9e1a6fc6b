import { day } from '@/lib/calendar/day';
import { certificateNumber, claimJob, inspectionJob, quoteJob, type Sample } from './sample';

/** What is written while a unit comes, waits and goes back. */
export const jobSamples: readonly Sample[] = [
  { name: 'Booked', content: { template: 'job-booked', data: {} } },
  {
    name: 'Booked, with an inspection fee in its price',
    content: { template: 'job-booked', data: {} },
    job: { inspectionFee: 1800 },
  },
  {
    name: 'Booked, an inspection alone',
    content: { template: 'job-booked', data: {} },
    job: inspectionJob,
  },
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
      data: {
        at: '3 Dec 2026, 14:05',
        owed: 0,
        refund: 0,
        isHere: false,
        replaced: { credited: ['2026-00042'] },
      },
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
  {
    name: 'Withdrawal recorded, the claim still to be answered',
    content: {
      template: 'withdrawal-recorded',
      data: { at: '3 Dec 2026, 14:05', owed: 0, refund: 6000, isHere: true, isAnswerDue: true },
    },
    job: { ...claimJob, isRepaired: false },
  },
  {
    name: 'Withdrawal recorded, told in a letter',
    content: {
      template: 'withdrawal-recorded',
      data: {
        at: '5 Dec 2026, 09:30',
        owed: 0,
        refund: 8900,
        isHere: true,
        told: { how: 'letter', on: day('2026-12-03'), words: 'I hereby withdraw from the contract.' },
      },
    },
    job: { agreed: 0, isRepaired: false },
  },
  { name: 'Booked, free of charge', content: { template: 'job-booked', data: {} }, job: claimJob },
  {
    name: 'Cancelled',
    content: { template: 'job-cancelled', data: { reason: 'You asked us to on the job page.' } },
    job: { isRepaired: false },
  },
  {
    name: 'Booking cancelled, paid before',
    content: { template: 'job-cancelled', data: { reason: '', refund: 7200 } },
    job: { isRepaired: false },
  },
  {
    name: 'Booking cancelled, at a price that was asked for',
    content: { template: 'job-cancelled', data: { reason: '', isQuoted: true } },
    job: { isRepaired: false },
  },
  {
    name: 'Claim cancelled, in cover',
    content: {
      template: 'job-cancelled',
      data: {
        reason: '',
        claimAgain: { endsOn: day('2027-12-03'), until: day('2027-12-03'), lateUntil: null },
      },
    },
    job: claimJob,
  },
  {
    name: 'Claim cancelled, after cover',
    content: {
      template: 'job-cancelled',
      data: { reason: '', claimAgain: { endsOn: day('2026-11-03'), until: null, lateUntil: null } },
    },
    job: claimJob,
  },
  {
    name: 'Parcel awaited',
    content: { template: 'parcel-awaited', data: { keptUntil: day('2027-01-12') } },
    job: { isRepaired: false },
  },
  {
    name: 'Parcel awaited that was named',
    content: { template: 'parcel-awaited', data: { keptUntil: day('2027-01-12'), isNamed: true } },
    job: { isRepaired: false },
  },
  {
    name: 'Parcel awaited before a closure',
    content: {
      template: 'parcel-awaited',
      data: {
        keptUntil: day('2027-01-12'),
        closure: { from: day('2026-12-21'), to: day('2027-01-01'), backOn: day('2027-01-04') },
      },
    },
    job: { isRepaired: false },
  },
  {
    name: 'Parcel awaited on a claim',
    content: { template: 'parcel-awaited', data: { keptUntil: day('2027-01-12') } },
    job: claimJob,
  },
  {
    name: 'Arrived as booked',
    content: {
      template: 'unit-arrived',
      data: {
        promisedOn: day('2026-12-09'),
        kept: { promises: 40, kept: 31 },
        differences: [],
        hasPhotos: true,
      },
    },
  },
  {
    name: 'Arrived as booked, after a job was opened for it',
    content: {
      template: 'unit-arrived',
      data: { promisedOn: day('2026-12-09'), differences: [], isFound: true },
    },
  },
  {
    name: 'Not here after all',
    content: {
      template: 'arrival-undone',
      data: { reason: 'Two parcels of the same model came on one day.', hadPhotos: true },
    },
  },
  {
    name: 'Not here after all, without a picture of it',
    content: { template: 'arrival-undone', data: { reason: '' } },
    job: claimJob,
  },
  {
    name: 'Arrived for an inspection',
    content: { template: 'unit-arrived', data: { promisedOn: day('2026-12-09'), differences: [] } },
    job: inspectionJob,
  },
  {
    name: 'Arrived on a claim',
    content: { template: 'unit-arrived', data: { promisedOn: day('2026-12-09'), differences: [] } },
    job: claimJob,
  },
  {
    name: 'Arrived before its claim was opened',
    content: {
      template: 'unit-arrived',
      data: { promisedOn: day('2026-12-09'), differences: [], isUnbooked: true },
    },
    job: claimJob,
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
    name: 'Ready once more, after its parcel came back',
    content: { template: 'unit-ready', data: { balance: 0, isAgain: true, hasCertificate: true } },
  },
  {
    name: 'Ready once more, to be sent unpaid as the owner decided',
    content: { template: 'unit-ready', data: { balance: 7200, isWaived: true } },
  },
  {
    name: 'Ready once more, its address not confirmed',
    content: {
      template: 'unit-ready',
      data: { balance: 0, isAgain: true, hasCertificate: true, asksAddress: true },
    },
  },
  {
    name: 'Worked on again, after its parcel came back',
    content: {
      template: 'work-reopened',
      data: {
        reason: 'A letter about the cell we fitted reached us, so we put in another one.',
        isAgain: true,
      },
    },
    job: { isRepaired: false },
  },
  {
    name: 'Ready, with an invoice whose day has passed',
    content: { template: 'unit-ready', data: { balance: 8900, invoice: { number: '2026-00042' } } },
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
    name: 'Goes back unrepaired, as the customer asked',
    content: {
      template: 'repair-stopped',
      data: {
        why: 'customer-asked',
        reason: 'You told us on the telephone that you have found another one.',
        gross: 960,
        inspectionFee: 0,
        refund: 0,
      },
    },
  },
  {
    name: 'Ready, and worked on again',
    content: {
      template: 'work-reopened',
      data: {
        reason: 'While we packed it, one of the new buttons stuck. We put in another one.',
        promisedOn: day('2026-12-11'),
      },
    },
    job: { isRepaired: false },
  },
  {
    name: 'Cannot be repaired, paid before',
    content: {
      template: 'repair-stopped',
      data: {
        why: 'cannot-repair',
        reason: 'The chip that failed is no longer made, and we found none that fits.',
        gross: 1800,
        inspectionFee: 1800,
        refund: 7100,
        replaced: { credited: ['2026-00042'], invoice: { number: '2026-00044' } },
      },
    },
  },
  {
    name: 'Collected without a repair',
    content: {
      template: 'unit-sent-back',
      data: {
        carrier: '',
        carrierReference: '',
        certificateNumber: null,
        revision: null,
        isCollected: true,
      },
    },
    job: { isRepaired: false },
  },
  {
    name: 'Collected unpaid, as the owner decided',
    content: {
      template: 'unit-sent-back',
      data: {
        carrier: '',
        carrierReference: '',
        certificateNumber,
        revision: 1,
        owed: 7200,
        isCollected: true,
      },
    },
  },
  {
    name: 'Parcel came back, with a certificate',
    content: {
      template: 'parcel-came-back',
      data: { reason: 'The carrier wrote on it: no such number in the street.', hasCertificate: true },
    },
  },
  {
    name: 'Parcel came back, without a repair',
    content: {
      template: 'parcel-came-back',
      data: { reason: 'Nobody fetched it from the post office.', hasCertificate: false },
    },
    job: { isRepaired: false },
  },
  {
    name: 'Sent once more, with days added',
    content: {
      template: 'unit-sent-back',
      data: {
        carrier: 'Harbour Parcels',
        carrierReference: 'RR123456785GB',
        certificateNumber,
        revision: 1,
        isAgain: true,
        coveredUntil: day('2027-12-22'),
      },
    },
  },
  {
    name: 'Parcel looked for',
    content: {
      template: 'parcel-sought',
      data: { carrier: 'Harbour Parcels', note: 'They saw it last in Sandmouth and search their depot.' },
    },
  },
  {
    name: 'Parcel found',
    content: { template: 'search-ended', data: { how: 'delivered', note: '' } },
  },
  {
    name: 'Parcel lost',
    content: {
      template: 'search-ended',
      data: {
        how: 'lost',
        note: 'We pay you what the carrier makes good, and what you paid for the repair.',
      },
    },
  },
  {
    name: 'Not left after all',
    content: {
      template: 'dispatch-undone',
      data: { reason: 'The wrong line of the list was pressed.', hasCertificate: true },
    },
  },
  {
    name: 'Not collected after all, without a repair',
    content: {
      template: 'dispatch-undone',
      data: { reason: 'You come on Friday, not today.', wasCollected: true },
    },
    job: { isRepaired: false },
  },
  {
    name: 'Sent, after it was said so by mistake',
    content: {
      template: 'unit-sent-back',
      data: {
        carrier: 'Harbour Parcels',
        carrierReference: 'RR123456785GB',
        certificateNumber,
        revision: 1,
        isAfterMistake: true,
        coveredUntil: day('2027-12-12'),
      },
    },
  },
  {
    name: 'Reference corrected',
    content: {
      template: 'reference-corrected',
      data: {
        carrier: 'Harbour Parcels',
        carrierReference: 'RR123456785GB',
        tracking: 'https://parcels.example.org/where?ref=RR123456785GB',
      },
    },
  },
  {
    name: 'Message from the workshop',
    content: {
      template: 'message-from-workshop',
      data: {
        text: 'We found a memory card in the slot. Shall we leave it in, or post it back beside the unit?',
        goesOn: true,
      },
    },
  },
  {
    name: 'Message from the workshop about a price',
    content: {
      template: 'message-from-workshop',
      data: {
        text: 'Yes, the price has the way back in it. You post it to us at your own cost.',
        goesOn: true,
      },
    },
    job: quoteJob,
  },
  {
    name: 'Message from the workshop once the job is over',
    content: {
      template: 'message-from-workshop',
      data: { text: 'Your carrying strap was under the bench. We post it to you tomorrow.' },
    },
  },
  {
    name: 'Message from the customer',
    content: { template: 'message-from-customer', data: { text: 'Please leave the card in.\n\nThank you!' } },
  },
  {
    name: 'Message from the customer, with photos',
    content: {
      template: 'message-from-customer',
      data: { text: 'The box came crushed at one corner.', photos: 2 },
    },
  },
  { name: 'Private link sent again', content: { template: 'link-copy', data: {} } },
  { name: 'Private link renewed', content: { template: 'link-renewed', data: {} } },
  {
    name: 'Private link of a quote renewed',
    content: { template: 'link-renewed', data: {} },
    job: quoteJob,
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
    name: 'Ready, every private link withdrawn',
    content: { template: 'unit-ready', data: { balance: 8900 } },
    hasNoLink: true,
  },
];
