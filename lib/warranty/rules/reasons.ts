import type { Day } from '@/lib/calendar/day';

/** What the program says before a person has seen the unit, strongest first. A newer revision is a reason, not an end. */
export const ANSWERS = [
  'not-recognised',
  'other-unit',
  'confirm-serial',
  'lapsed',
  'outside-cover',
  'already-open',
  'covered-subject-to-inspection',
] as const;
export type Answer = (typeof ANSWERS)[number];

/** A fact that led to an answer, kept as data with the claim; reason-sentences.ts puts it in words. */
export type Reason =
  | { code: 'number-unknown' }
  | { code: 'signature-fails'; number: string }
  | { code: 'serial-same'; serial: string }
  | { code: 'serial-differs'; serial: string }
  | { code: 'serial-close'; serial: string }
  /** The certificate asked about was replaced; everything else was looked up on the revision in force. */
  | { code: 'superseded'; asked: number; assessed: number; replacedOn: Day }
  | { code: 'line-ended'; lineId: string; description: string; endedOn: Day; lastClaimDay: Day }
  | { code: 'in-grace'; lineId: string; description: string; endedOn: Day; graceUntil: Day }
  /** The line has ended, and the claim is in time because its last day was moved to a working day. */
  | { code: 'last-day-moved'; lineId: string; description: string; endedOn: Day; lastClaimDay: Day }
  | { code: 'line-covers'; lineId: string; description: string; endsOn: Day }
  | { code: 'symptom-outside'; symptom: string }
  /** The customer chose "something else": no list can judge it, a person will. */
  | { code: 'symptom-unlisted' }
  /** The promise does not pass to a new owner, and who asks is not known: a person looks at it. */
  | { code: 'first-customer-only' }
  | { code: 'open-claim'; claimNumber: string; openedOn: Day }
  /** A right by law is not touched by anything the certificate says (for instance CRA 2015 s.55). */
  | { code: 'rights-by-law' };

export type ReasonCode = Reason['code'];

/** What is still missing before the answer can become more than preliminary. */
export const NEEDS = [
  'number-again',
  'serial-again',
  'serial-photo',
  'person-confirms-serial',
  'person-decides',
  'fee-agreed',
  'symptom-described',
  'inspection',
] as const;
export type Need = (typeof NEEDS)[number];

/** The one thing to do next; its sentence says when and what it costs. */
export type NextStep =
  | { kind: 'check-serial' }
  | { kind: 'send-serial-photo' }
  | { kind: 'ask-a-person'; until: Day }
  | { kind: 'book-paid-repair' }
  | { kind: 'see-open-claim'; claimNumber: string }
  | { kind: 'open-claim'; until: Day };

export type Assessment = {
  answer: Answer;
  reasons: Reason[];
  needs: Need[];
  /** Null only for 'not-recognised': every other answer leads somewhere. */
  nextStep: NextStep | null;
};
