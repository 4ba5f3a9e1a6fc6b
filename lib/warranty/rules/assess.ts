import { type Day, maxDay, minDay } from '@/lib/calendar/day';
import type { WorkingCalendar } from '@/lib/calendar/working';
import type { SerialComparison } from '@/lib/numbers/serial';
import type { Assessment, Need, NextStep, Reason } from './reasons';
import { isOther, type LineStanding, lineStanding, relevantLines } from './standing';
import type { CoverLine, HeldInterval, PolicyTerms } from './terms';

export type AssessedRevision = { revision: number; issuedOn: Day; lines: CoverLine[] };

export type AssessedCertificate = AssessedRevision & {
  number: string;
  /** As written on the certificate; sentences show only its end. */
  serial: string;
  /** The revision in force, when the one asked about has been replaced by it. */
  replacedBy: AssessedRevision | null;
};

export type OpenClaim = { number: string; openedOn: Day };

export type ClaimFacts = {
  /** Null when the number is unknown. */
  certificate: AssessedCertificate | null;
  signatureValid: boolean;
  serial: SerialComparison;
  /** The day in the workshop's zone on which the customer asks, not the day a parcel arrives. */
  today: Day;
  /** One of the catalogue's symptoms, or 'other'. */
  symptom: string;
  /** A claim on the same certificate chain that is not closed. */
  openClaim: OpenClaim | null;
  /** Terms of the revision in force. */
  terms: PolicyTerms;
  calendar: WorkingCalendar;
  /** Stays of the whole chain; a unit still with us has `to: today`. */
  held: readonly HeldInterval[];
};

/**
 * The preliminary answer to a claim, strongest ground first: not-recognised, other-unit, confirm-serial, lapsed,
 * outside-cover, already-open, and otherwise covered-subject-to-inspection, never promised harder before inspection.
 *
 * A replaced certificate is assessed on the revision in force, and a reason says so. A claim that is already open counts
 * from the day it was opened, so waiting for us never makes it late. In the days of grace the answer is 'lapsed' but the
 * next step is a person. Every reason carries the date, line or serial it rests on.
 *
 * Example: serial 'same', a line for 'no charge' running until 12 December 2027, asked on 1 March 2027 about 'no charge':
 * covered-subject-to-inspection, reasons serial-same and line-covers, next step open-claim until 13 December 2027.
 */
export function assess(facts: ClaimFacts): Assessment {
  const { certificate } = facts;
  if (certificate === null) return unrecognised({ code: 'number-unknown' });
  if (!facts.signatureValid) return unrecognised({ code: 'signature-fails', number: certificate.number });
  if (facts.serial === 'different') return otherUnit(certificate);
  if (facts.serial === 'likely-misread') return confirmSerial(certificate);

  const reasons: Reason[] = [
    { code: 'serial-same', serial: certificate.serial },
    ...replacement(certificate),
  ];
  const { lines } = certificate.replacedBy ?? certificate;
  const named = relevantLines(lines, facts.symptom);
  const day = countedFrom(facts);
  // A symptom of no line asks about the whole certificate: when everything has ended, that is the stronger ground.
  const standings = (named.length > 0 ? named : lines).map((line) => lineStanding(line, day, facts));
  const inTime = standings.filter(({ standing }) => standing === 'running' || standing === 'rolled');
  const inGrace = standings.filter(({ standing }) => standing === 'in-grace');

  // An open claim in its days of grace already lies with the person who decides.
  const waitsForPerson = inGrace.length > 0 && facts.openClaim !== null;
  if (inTime.length === 0 && !waitsForPerson) return lapsed(facts, reasons, standings, inGrace);
  if (named.length === 0) return outsideCover(facts, reasons);
  if (facts.openClaim !== null) return alreadyOpen(facts.openClaim, reasons);
  return coveredSubjectToInspection(facts, reasons, inTime);
}

// A claim counts from the day it was opened (domain rule; FR C. conso. L217-28 counts from the request as well).
function countedFrom(facts: ClaimFacts): Day {
  return facts.openClaim === null ? facts.today : minDay(facts.openClaim.openedOn, facts.today);
}

function replacement({ revision, replacedBy }: AssessedCertificate): Reason[] {
  if (replacedBy === null) return [];
  return [
    { code: 'superseded', asked: revision, assessed: replacedBy.revision, replacedOn: replacedBy.issuedOn },
  ];
}

function unrecognised(reason: Reason): Assessment {
  return { answer: 'not-recognised', reasons: [reason], needs: ['number-again'], nextStep: null };
}

function otherUnit({ serial }: AssessedCertificate): Assessment {
  return {
    answer: 'other-unit',
    reasons: [{ code: 'serial-differs', serial }],
    needs: ['serial-again'],
    nextStep: { kind: 'check-serial' },
  };
}

function confirmSerial({ serial }: AssessedCertificate): Assessment {
  return {
    answer: 'confirm-serial',
    reasons: [{ code: 'serial-close', serial }],
    needs: ['serial-photo', 'person-confirms-serial'],
    nextStep: { kind: 'send-serial-photo' },
  };
}

function lapsed(
  facts: ClaimFacts,
  reasons: Reason[],
  ended: LineStanding[],
  inGrace: LineStanding[],
): Assessment {
  const endings = ended.map(({ line, count }): Reason => {
    const { id: lineId, description } = line;
    return inGrace.some((late) => late.line.id === lineId)
      ? { code: 'in-grace', lineId, description, endedOn: count.end, graceUntil: count.lastGraceDay }
      : { code: 'line-ended', lineId, description, endedOn: count.end, lastClaimDay: count.lastClaimDay };
  });
  const given = [
    ...reasons,
    ...endings,
    ...(inGrace.length > 0 ? whoseReason(facts) : []),
    ...openClaimReason(facts.openClaim),
    { code: 'rights-by-law' } as const,
  ];
  if (inGrace.length === 0) return { answer: 'lapsed', reasons: given, ...paidUnlessOpen(facts.openClaim) };
  const until = maxDay(facts.today, ...inGrace.map(({ count }) => count.lastGraceDay));
  return {
    answer: 'lapsed',
    reasons: given,
    needs: ['person-decides'],
    nextStep: { kind: 'ask-a-person', until },
  };
}

function outsideCover(facts: ClaimFacts, reasons: Reason[]): Assessment {
  return {
    answer: 'outside-cover',
    reasons: [
      ...reasons,
      { code: 'symptom-outside', symptom: facts.symptom },
      ...openClaimReason(facts.openClaim),
      { code: 'rights-by-law' },
    ],
    ...paidUnlessOpen(facts.openClaim),
  };
}

function alreadyOpen(openClaim: OpenClaim, reasons: Reason[]): Assessment {
  return {
    answer: 'already-open',
    reasons: [...reasons, ...openClaimReason(openClaim)],
    needs: [],
    nextStep: seeOpenClaim(openClaim),
  };
}

function coveredSubjectToInspection(
  facts: ClaimFacts,
  reasons: Reason[],
  inTime: LineStanding[],
): Assessment {
  const isUnlisted = isOther(facts.symptom);
  const covering = inTime.map(({ line, count, standing }): Reason => {
    const { id: lineId, description } = line;
    return standing === 'rolled'
      ? { code: 'last-day-moved', lineId, description, endedOn: count.end, lastClaimDay: count.lastClaimDay }
      : { code: 'line-covers', lineId, description, endsOn: count.end };
  });
  const needs: Need[] = isUnlisted ? ['symptom-described', 'inspection'] : ['inspection'];
  return {
    answer: 'covered-subject-to-inspection',
    reasons: [
      ...reasons,
      ...(isUnlisted ? [{ code: 'symptom-unlisted' } as const] : []),
      ...covering,
      ...whoseReason(facts),
    ],
    needs,
    nextStep: {
      kind: 'open-claim',
      until: maxDay(facts.today, ...inTime.map(({ count }) => count.lastClaimDay)),
    },
  };
}

function whoseReason({ terms }: ClaimFacts): Reason[] {
  return terms.transferable ? [] : [{ code: 'first-customer-only' }];
}

function openClaimReason(openClaim: OpenClaim | null): Reason[] {
  if (openClaim === null) return [];
  return [{ code: 'open-claim', claimNumber: openClaim.number, openedOn: openClaim.openedOn }];
}

function seeOpenClaim({ number }: OpenClaim): NextStep {
  return { kind: 'see-open-claim', claimNumber: number };
}

// The unit is on its way to us already: what does not belong to the claim is settled there, not by a second parcel.
function paidUnlessOpen(openClaim: OpenClaim | null): Pick<Assessment, 'needs' | 'nextStep'> {
  if (openClaim !== null) return { needs: [], nextStep: seeOpenClaim(openClaim) };
  return { needs: ['fee-agreed'], nextStep: { kind: 'book-paid-repair' } };
}
