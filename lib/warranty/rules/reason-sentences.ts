import type { Day } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';
import { showNumber } from '@/lib/numbers/job-number';
import { foldSerial } from '@/lib/numbers/serial';
import { rightsStillOpen } from './legal-rights';
import type { Assessment, NextStep, Reason } from './reasons';
import { OTHER_SYMPTOM, symptomWords } from './standing';

/** What the sentences need from the workshop's settings; amounts and lengths of time arrive as finished text. */
export type ClaimFormat = {
  locale: string;
  /** ISO 3166-1 alpha-2, for the sentence on rights by law. */
  country: string;
  /** For instance '£18.00'; null where the workshop takes none. */
  inspectionFee: string | null;
  /** What the customer pays to post a claim to us: 'free' or an amount. */
  postageToUs: string;
  postageBack: string;
  /** How long a person takes to answer: '2 working days'. */
  answerWithin: string;
};

/** The end of a serial, enough to recognise one's own unit and too little to make one up: 'QA-0031-B' gives '1B'. */
export function serialEnding(serial: string): string {
  const key = Array.from(foldSerial(serial));
  return key.slice(-Math.max(1, Math.min(3, Math.floor(key.length / 3)))).join('');
}

/** One reason for the customer, in plain words. Never blames, and never turns anybody away. */
export function sentence(reason: Reason, format: ClaimFormat): string {
  const short = (d: Day) => formatDay(d, format.locale, 'short');
  const weekday = (d: Day) => formatDay(d, format.locale, 'weekday');
  switch (reason.code) {
    case 'number-unknown':
      return 'We have no certificate with this number. Please check it against the paper, one character at a time.';
    case 'signature-fails':
      return `Something here is not the same as on the certificate ${showNumber(reason.number)} that we sent out. A smudge or a link that was cut short is enough. Please open the link in our e-mail, or write to us.`;
    case 'serial-same':
      return 'The serial you gave is the one on the certificate.';
    case 'serial-differs':
      return `The certificate is for a unit with a serial that ends in ${serialEnding(reason.serial)}. The serial you gave is another one.`;
    case 'serial-close':
      return `The serial you gave is very close to the one on the certificate, which ends in ${serialEnding(reason.serial)}. Letters like O and 0 are easy to mix up.`;
    case 'superseded':
      return `Revision ${reason.asked} of this certificate was replaced by revision ${reason.assessed} on ${short(reason.replacedOn)}. We looked at revision ${reason.assessed}, which is the one that counts.`;
    case 'line-ended':
      return reason.lastClaimDay === reason.endedOn
        ? `Cover for “${reason.description}” ended on ${short(reason.endedOn)}.`
        : `Cover for “${reason.description}” ended on ${short(reason.endedOn)}. The last day to open a claim was ${weekday(reason.lastClaimDay)}.`;
    case 'in-grace':
      return `Cover for “${reason.description}” ended on ${short(reason.endedOn)}. That is only a short time ago, so a person decides, not a program. You can ask until ${weekday(reason.graceUntil)}.`;
    case 'last-day-moved':
      return `Cover for “${reason.description}” ended on ${weekday(reason.endedOn)}, when we were closed. So you can still open a claim until ${weekday(reason.lastClaimDay)}.`;
    case 'line-covers':
      return `“${reason.description}” is covered until the end of ${weekday(reason.endsOn)}.`;
    case 'symptom-outside':
      return `“${reason.symptom}” is not a fault that belongs to the work and parts on this certificate. Do you think our work has to do with it all the same? Choose “${symptomWords(OTHER_SYMPTOM)}” and say why: then we look at the unit first.`;
    case 'symptom-unlisted':
      return 'What you see is not on our list. So we look at the unit first.';
    case 'first-customer-only':
      return 'We made this promise to the customer who sent us the unit. It does not pass to a new owner. If you are one, send us your claim all the same: a person reads it and tells you what we can do.';
    case 'open-claim':
      return `A claim is open on this certificate already: ${showNumber(reason.claimNumber)}, opened on ${short(reason.openedOn)}.`;
    case 'rights-by-law':
      return rightsStillOpen(format.country);
  }
}

/** The page of an open claim takes messages, so nobody has to post a unit to learn what a person thinks of it. */
const ASK_BEFORE = 'Do you want to know more before you post it? Ask us on the page of your claim.';

/**
 * What to do next, when it happens and what it costs. A unit with a cell in doubt is told nothing of posting it: the claim is opened,
 * so that it counts from that day, and the workshop arranges the way.
 */
export function nextStepSentence(step: NextStep, format: ClaimFormat, isCellRecalled = false): string {
  const stays = isCellRecalled ? withoutPosting(step, format) : null;
  if (stays !== null) return stays;
  const { inspectionFee, postageToUs, postageBack, answerWithin, locale } = format;
  switch (step.kind) {
    case 'check-serial':
      return 'Read the serial on the unit once more and type it again. You get the answer at once, and it is free. If it still does not fit, send us a message: we are glad to look for the right certificate.';
    case 'send-serial-photo':
      return `Add a photo of the serial on the unit and open your claim, then post the unit to us. A person compares the two and answers within ${answerWithin} after it arrives. This is free. Postage to us: ${postageToUs}. ${ASK_BEFORE}`;
    case 'ask-a-person':
      return `Open your claim by ${formatDay(step.until, locale, 'weekday')}, then post the unit to us. A person decides whether it is let in, and answers within ${answerWithin} after it arrives. This is free. Postage to us: ${postageToUs}. ${ASK_BEFORE}`;
    case 'book-paid-repair':
      return `You can have it repaired as a paid job. Please do not post it yet. Book a repair from the price list, or ask us for a price: asking is free, and we answer within ${answerWithin}. You can say no to any price.${inspectionFee === null ? '' : ` If the unit must be here before we can name one, looking at it costs ${inspectionFee}, and we say so first.`}`;
    case 'see-open-claim':
      return `Did you open it? The private link in our e-mail shows where the unit is now and what comes next. There is nothing to pay for looking. Was it somebody else, for instance who had the unit before you? Write to us, and a person answers within ${answerWithin}.`;
    case 'open-claim':
      return `Open your claim by ${formatDay(step.until, locale, 'weekday')}, then post the unit to us. We look at it within ${answerWithin} after it arrives. The inspection is free. Postage to us: ${postageToUs}. Postage back: ${postageBack}. If we find something else, we ask you before anything costs money.`;
  }
}

function withoutPosting(step: NextStep, { answerWithin, locale }: ClaimFormat): string | null {
  const stay = `Please do not post the unit. It holds a cell that we are no longer sure of, and such a cell must not go by post. Write to us on the page of your claim: we answer within ${answerWithin} how it gets here safely. This is free.`;
  switch (step.kind) {
    case 'send-serial-photo':
      return `Add a photo of the serial on the unit and open your claim. A person compares the two. ${stay}`;
    case 'ask-a-person':
      return `Open your claim by ${formatDay(step.until, locale, 'weekday')}. A person decides whether it is let in once the unit is here. ${stay}`;
    case 'open-claim':
      return `Open your claim by ${formatDay(step.until, locale, 'weekday')}. ${stay} If we find something else, we ask you before anything costs money.`;
    default:
      return null;
  }
}

/** The line above the reasons. */
export function answerHeading({ answer, nextStep }: Pick<Assessment, 'answer' | 'nextStep'>): string {
  switch (answer) {
    case 'not-recognised':
      return 'We do not know this certificate yet';
    case 'other-unit':
      return 'This looks like another unit';
    case 'confirm-serial':
      return 'We would like to check the serial with you';
    case 'lapsed':
      return nextStep?.kind === 'ask-a-person' ? 'A person will look at this' : 'The cover has ended';
    case 'outside-cover':
      return 'This fault is not part of the cover';
    case 'already-open':
      return 'A claim is already open';
    case 'covered-subject-to-inspection':
      return 'This looks covered. We inspect the unit first.';
  }
}
