import { formatDay } from '@/lib/calendar/format';
import { describePeriod } from '@/lib/calendar/period';
import type { CertificateFacts, Section } from './certificate-facts';
import type { CoverCount } from './cover';
import { explainCount, inDays } from './cover-sentences';
import { SHORTEST_LONG_STAY_DAYS } from './held';
import { FLOOR_AFTER_RETURN } from './renew';
import type { CoverLine, HeldRule, PolicyTerms, StartEvent } from './terms';

/** The covered lines, each with its own count: what, for how long, from when, until when. */
export function linesSection(
  lines: readonly { line: CoverLine; count: CoverCount }[],
  locale: string,
): Section {
  return {
    key: 'cover',
    heading: 'What is covered, and until when',
    paragraphs: ['Each line runs for itself.'],
    items: {
      numbered: false,
      texts: lines.map(
        ({ line, count }) =>
          `${line.kind === 'work' ? 'Work' : 'Part'}: ${line.description}. Covered until the end of ${formatDay(count.end, locale, 'weekday')} (${explainCount(count, locale)}).`,
      ),
    },
  };
}

/** How days are counted under these terms, in sentences; the certificate states its own rule (Regulation 1182/71 binds EU acts, not us). */
export function countingRule(terms: PolicyTerms, zoneLabel: string): string[] {
  const sentences = [
    `Cover starts with ${startWords(terms.startEvent)}. That day itself is not counted.`,
    'Months and years end on the same date of the last month, or on its last day where that date does not exist.',
    `Cover lasts until 24:00 on its last day, ${zoneLabel}. Weekends and holidays are counted like any other day.`,
    'A claim counts from the day you open it, not from the day the unit reaches us.',
    heldWords(terms.heldRule),
  ];
  if (terms.rollLastDay)
    sentences.push(
      'If the last day is one on which we are closed, you can still open a claim on the next day we work.',
    );
  if (terms.graceDays > 0)
    sentences.push(
      `If you are up to ${inDays(terms.graceDays)} late, ask all the same: a person decides, not a program.`,
    );
  if (terms.renewedMinimum !== null)
    sentences.push(
      `After a covered claim, what we did again or replaced is covered for the time that was left, or for ${describePeriod(terms.renewedMinimum)} from the day you have the unit back, whichever is longer.`,
    );
  return sentences;
}

/** The start event as a day that a sentence names. */
export function startWords(event: StartEvent): string {
  switch (event) {
    case 'handed-to-carrier':
      return 'the day we hand the unit to the carrier, or you collect it';
    case 'delivered':
      return 'the latest usual day of delivery, or the day you collect the unit';
    case 'collected':
      return 'the day you collect the unit';
  }
}

function heldWords(rule: HeldRule): string {
  switch (rule) {
    case 'none':
      return 'Days while the unit is with us on a claim are not added to the cover.';
    case 'whole-days':
      return 'Whole days while the unit is out of your hands for a claim are added at the end. The day you hand it in is not one of them.';
    case 'from-seven-days':
      return `If the unit is out of your hands for a claim for ${SHORTEST_LONG_STAY_DAYS} days or more, those days are added at the end. The day you hand it in is not one of them.`;
    case 'two-months-from-return':
      return `After a covered claim, cover for what we put right does not end sooner than ${describePeriod(FLOOR_AFTER_RETURN)} after you have the unit back.`;
  }
}

/** What the promise does not reach. Says so plainly when the workshop listed nothing. */
export function exclusionsSection({ exclusions, workTerm, partsTerm }: PolicyTerms): Section {
  const paragraphs = ['Faults that have nothing to do with the lines above are not covered.'];
  if (workTerm === null)
    paragraphs.push('The work itself is not covered by this certificate, only the parts.');
  if (partsTerm === null) paragraphs.push('The parts are not covered by this certificate, only the work.');
  const heading = 'What is not covered';
  if (exclusions.length === 0) return { key: 'exclusions', heading, paragraphs };
  return {
    key: 'exclusions',
    heading,
    paragraphs: [...paragraphs, 'Also not covered:'],
    items: { numbered: false, texts: [...exclusions] },
  };
}

/** What the guarantor does and pays for, and what not (16 CFR 701.3(a)(3)). */
export function whatWeDo({
  postageToUs,
  postageBack,
}: Pick<CertificateFacts, 'postageToUs' | 'postageBack'>): Section {
  return {
    key: 'what-we-do',
    heading: 'What we do',
    paragraphs: [
      'If covered work or a covered part fails within its time, we put it right. Inspection, work and parts for that cost you nothing.',
      `Postage to us: ${postageToUs}. Postage back to you: ${postageBack}.`,
      'If we find something that is not covered, we tell you why and ask you before anything costs money.',
    ],
  };
}

/** The steps of a claim, with addresses (Directive (EU) 2019/771 Art. 17(2)(c); 16 CFR 701.3(a)(5)). */
export function claimSteps({
  claimPage,
  answerWithin,
  guarantor,
}: Pick<CertificateFacts, 'claimPage' | 'answerWithin' | 'guarantor'>): Section {
  return {
    key: 'how-to-claim',
    heading: 'How to claim',
    paragraphs: [
      `No internet? Write to ${guarantor.name}, ${guarantor.addressLines.join(', ')}, with the number of this certificate.`,
    ],
    items: {
      numbered: true,
      texts: [
        `Scan the code on this certificate, or go to ${claimPage} and type its number.`,
        'Give the serial of the unit and say what it does or does not do. You see at once where you stand.',
        'Open the claim, print the packing slip or write its number on the parcel, and post the unit to us.',
        `We look at it within ${answerWithin} after it arrives, and tell you what we found and why.`,
        'We put it right and send it back, with a new revision of this certificate.',
      ],
    },
  };
}
