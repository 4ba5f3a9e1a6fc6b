import { liftText, recallText } from '@/lib/bench/rules/recall-text';
import { day } from '@/lib/calendar/day';
import { certificateNumber, claimJob, claimNumber, type Sample } from './sample';

/** Certificates, claims and letters about a lot. */
export const warrantySamples: readonly Sample[] = [
  {
    name: 'Claim opened',
    content: { template: 'claim-opened', data: { claimNumber, certificateNumber } },
    job: claimJob,
  },
  {
    name: 'Claim opened late, with a serial that is close',
    content: {
      template: 'claim-opened',
      data: { claimNumber, certificateNumber, isLate: true, isSerialClose: true },
    },
    job: claimJob,
  },
  {
    name: 'Claim opened on a unit that must not be posted',
    content: { template: 'claim-opened', data: { claimNumber, certificateNumber, mustNotPost: true } },
    job: claimJob,
  },
  {
    name: 'Claim opened by the workshop, late, for a unit that came',
    content: {
      template: 'claim-opened',
      data: { claimNumber, certificateNumber, isLate: true, byUs: true, isHere: true },
    },
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
  ...(
    [
      ['fault', 'workmanship', 'One of our joints cracked, three weeks after the cover had ended.'],
      ['no-fault', 'no-fault-found', 'It played for four hours on our bench without a dropout.'],
    ] as const
  ).map(
    ([afterCover, cause, reasonText]): Sample => ({
      name: `Claim ruled: after the cover had ended, ${afterCover}`,
      content: {
        template: 'claim-ruled',
        data: { claimNumber, ruling: 'not-covered', cause, reasonText, mayContest: true, afterCover },
      },
      job: claimJob,
    }),
  ),
  ...(['not-covered', 'partly'] as const).map(
    (ruling): Sample => ({
      name: `Claim ruled: ${ruling}, at an agreed price`,
      content: {
        template: 'claim-ruled',
        data: {
          claimNumber,
          ruling,
          cause: ruling === 'partly' ? 'fitted-part' : 'separate-fault',
          reasonText:
            'We looked again. The fader is worn on its own track, away from the socket that we fitted.',
          mayContest: false,
          agreedGross: 6000,
        },
      },
      job: claimJob,
    }),
  ),
  {
    name: 'Claim contested',
    content: {
      template: 'claim-contested',
      data: { claimNumber, text: 'The dent was there when I bought it.\nI have a photo from last summer.' },
    },
    job: claimJob,
  },
  {
    name: 'Contest written down, told by telephone',
    content: {
      template: 'contest-recorded',
      data: {
        claimNumber,
        told: { how: 'telephone', on: day('2027-02-10'), words: 'The dent was there when I bought it.' },
        askedGross: 6000,
      },
    },
    job: claimJob,
  },
  {
    name: 'Contest written down, told in a letter, of a unit that was ready',
    content: {
      template: 'contest-recorded',
      data: {
        claimNumber,
        told: { how: 'letter', on: day('2027-02-10'), words: 'The dent was there when I bought it.' },
        wasReady: true,
        promisedOn: day('2027-02-16'),
      },
    },
    job: claimJob,
  },
  {
    name: 'Ruling looked at again, with a price that waited',
    content: {
      template: 'claim-reopened',
      data: {
        claimNumber,
        reason: 'In its last test of ten hours the fault came back. It is not what we thought it was.',
        askedGross: 6000,
        mayContest: true,
      },
    },
    job: claimJob,
  },
  {
    name: 'Ruling looked at again, of a unit that was ready',
    content: {
      template: 'claim-reopened',
      data: {
        claimNumber,
        reason: 'In its last test of ten hours the fault came back. It is not what we thought it was.',
        wasReady: true,
        promisedOn: day('2027-02-16'),
        mayContest: true,
      },
    },
    job: claimJob,
  },
  {
    name: 'Ruling looked at again, after a contest',
    content: {
      template: 'claim-reopened',
      data: { claimNumber, reason: 'We had looked at the wrong socket.', mayContest: false },
    },
    job: claimJob,
  },
  {
    name: 'Certificate sent again',
    content: { template: 'certificate-copy', data: { certificateNumber, revision: 2 } },
  },
  {
    name: 'Certificate sent again, with days given back',
    content: {
      template: 'certificate-copy',
      data: { certificateNumber, revision: 1, coveredUntil: day('2027-12-22') },
    },
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
    name: 'Letter about a lot taken back',
    content: {
      template: 'lot-recall-lifted',
      data: {
        part: 'Lithium-ion cell, 2.5 Ah',
        lot: 'NB-0588',
        text: liftText({ part: 'Lithium-ion cell, 2.5 Ah' }),
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
];
