import { day } from '@/lib/calendar/day';
import type { MailContent } from '@/lib/mail/rules/content';
import type { Setting } from '../letter';

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
  returnFee: 960,
  customer: 'Ines Farrow',
  promisedOn: day('2026-12-09'),
  stated: { days: 5, isQuoted: false },
  isRepaired: true,
  hasLithiumBattery: true,
};

export const claimJob = { kind: 'claim', agreed: 0 } as const;
export const inspectionJob = { agreed: 1800, inspectionFee: 1800, isInspection: true } as const;
export const quoteJob = {
  number: 'Q-5T8B-N3WZ',
  kind: 'quote',
  unit: 'Marram Two',
  serial: '',
  repair: '',
  agreed: 0,
  promisedOn: null,
  isRepaired: false,
} as const;
export const claimNumber = 'C7TW3M9HB';
export const certificateNumber = 'W2P8RN64K';
