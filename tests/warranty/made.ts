import { day } from '@/lib/calendar/day';
import { holidayCalendar } from '@/lib/calendar/holidays';
import type { WorkingCalendar } from '@/lib/calendar/working';
import type { ClaimFacts } from '@/lib/warranty/rules/assess';
import type { CoverLine, HeldInterval, PolicyTerms } from '@/lib/warranty/rules/terms';

/** Made-up certificates of Quay & Alder, Sandmouth, for the tests of this room. */
export const ENGLAND: WorkingCalendar = holidayCalendar({
  country: 'GB',
  region: 'ENG',
  years: [2024, 2025, 2026, 2027, 2028, 2029],
});

export function someTerms(changes: Partial<PolicyTerms> = {}): PolicyTerms {
  return {
    startEvent: 'handed-to-carrier',
    workTerm: 'P12M',
    partsTerm: 'P12M',
    exclusions: ['Liquid that got in after we sent the unit back'],
    renewedMinimum: 'P90D',
    heldRule: 'whole-days',
    rollLastDay: true,
    graceDays: 14,
    transferable: true,
    ...changes,
  };
}

export function someLine(changes: Partial<CoverLine> = {}): CoverLine {
  return {
    id: 'usb',
    kind: 'work',
    description: 'USB socket soldered',
    symptoms: ['does not charge', 'loose plug'],
    term: 'P12M',
    startsOn: day('2026-12-03'),
    renewedUntil: null,
    ...changes,
  };
}

/** A stay out of the customer's hands: handed in on the first day, back on the second. */
export function stay(from: string, to: string, claimNumber = 'C2222222A'): HeldInterval {
  return { from: day(from), to: day(to), claimNumber };
}

export function someFacts(changes: Partial<ClaimFacts> = {}): ClaimFacts {
  return {
    certificate: {
      number: 'W4K7QX29D',
      serial: 'HHW-20417-C',
      revision: 1,
      issuedOn: day('2026-12-03'),
      lines: [someLine()],
      replacedBy: null,
    },
    signatureValid: true,
    serial: 'same',
    today: day('2027-03-01'),
    symptom: 'does not charge',
    openClaim: null,
    terms: someTerms(),
    calendar: ENGLAND,
    held: [],
    ...changes,
  };
}
