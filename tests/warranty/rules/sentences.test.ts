import { describe, expect, it } from 'vitest';
import { day } from '@/lib/calendar/day';
import { RULINGS } from '@/lib/warranty/rules/causes';
import { claimEnd } from '@/lib/warranty/rules/claim-end';
import {
  answerHeading,
  type ClaimFormat,
  nextStepSentence,
  sentence,
  serialEnding,
} from '@/lib/warranty/rules/reason-sentences';
import { ANSWERS, type NextStep, type Reason, type ReasonCode } from '@/lib/warranty/rules/reasons';
import { CATCH_QUESTION, contestSentence, rulingSentence } from '@/lib/warranty/rules/ruling-sentences';
import { readingGrade } from '../reading-grade';

const format: ClaimFormat = {
  locale: 'en-GB',
  country: 'GB',
  inspectionFee: '£18.00',
  postageToUs: '£6.40',
  postageBack: 'free',
  answerWithin: '2 working days',
};
const line = { lineId: 'usb', description: 'USB socket soldered' };
const serial = 'HHW-20417-C';

/** One sample and its sentence for each reason; a new reason without a row here does not compile. */
const spoken: { [C in ReasonCode]: { reason: Extract<Reason, { code: C }>; says: string } } = {
  'number-unknown': {
    reason: { code: 'number-unknown' },
    says: 'We have no certificate with this number. Please check it against the paper, one character at a time.',
  },
  'signature-fails': {
    reason: { code: 'signature-fails', number: 'W4K7QX29D' },
    says: 'Something here is not the same as on the certificate W-4K7Q-X29D that we sent out. A smudge or a link that was cut short is enough. Please open the link in our e-mail, or write to us.',
  },
  'serial-same': {
    reason: { code: 'serial-same', serial },
    says: 'The serial you gave is the one on the certificate.',
  },
  'serial-differs': {
    reason: { code: 'serial-differs', serial },
    says: 'The certificate is for a unit with a serial that ends in 17C. The serial you gave is another one.',
  },
  'serial-close': {
    reason: { code: 'serial-close', serial },
    says: 'The serial you gave is very close to the one on the certificate, which ends in 17C. Letters like O and 0 are easy to mix up.',
  },
  superseded: {
    reason: { code: 'superseded', asked: 1, assessed: 2, replacedOn: day('2027-11-20') },
    says: 'Revision 1 of this certificate was replaced by revision 2 on 20 Nov 2027. We looked at revision 2, which is the one that counts.',
  },
  'line-ended': {
    reason: {
      code: 'line-ended',
      ...line,
      endedOn: day('2027-12-12'),
      lastClaimDay: day('2027-12-13'),
    },
    says: 'Cover for “USB socket soldered” ended on 12 Dec 2027. The last day to open a claim was Monday 13 December 2027.',
  },
  'in-grace': {
    reason: { code: 'in-grace', ...line, endedOn: day('2027-12-12'), graceUntil: day('2027-12-27') },
    says: 'Cover for “USB socket soldered” ended on 12 Dec 2027. That is only a short time ago, so a person decides, not a program. You can ask until Monday 27 December 2027.',
  },
  'last-day-moved': {
    reason: {
      code: 'last-day-moved',
      ...line,
      endedOn: day('2027-12-12'),
      lastClaimDay: day('2027-12-13'),
    },
    says: 'Cover for “USB socket soldered” ended on Sunday 12 December 2027, when we were closed. So you can still open a claim until Monday 13 December 2027.',
  },
  'line-covers': {
    reason: { code: 'line-covers', ...line, endsOn: day('2027-12-03') },
    says: '“USB socket soldered” is covered until the end of Friday 3 December 2027.',
  },
  'symptom-outside': {
    reason: { code: 'symptom-outside', symptom: 'cracked screen' },
    says: '“cracked screen” is not a fault that belongs to the work and parts on this certificate. Do you think our work has to do with it all the same? Choose “Something else” and say why: then we look at the unit first.',
  },
  'symptom-unlisted': {
    reason: { code: 'symptom-unlisted' },
    says: 'What you see is not on our list. So we look at the unit first.',
  },
  'first-customer-only': {
    reason: { code: 'first-customer-only' },
    says: 'We made this promise to the customer who sent us the unit. It does not pass to a new owner. If you are one, send us your claim all the same: a person reads it and tells you what we can do.',
  },
  'open-claim': {
    reason: { code: 'open-claim', claimNumber: 'C8H2M4T6V', openedOn: day('2027-02-20') },
    says: 'A claim is open on this certificate already: C-8H2M-4T6V, opened on 20 Feb 2027.',
  },
  'rights-by-law': {
    reason: { code: 'rights-by-law' },
    says: 'Your rights by law stay open. If a repair was not done with reasonable care and skill, you can ask us to do it again (Consumer Rights Act 2015, sections 49 and 55).',
  },
};
const samples = Object.values(spoken);

const steps: NextStep[] = [
  { kind: 'check-serial' },
  { kind: 'send-serial-photo' },
  { kind: 'ask-a-person', until: day('2027-12-27') },
  { kind: 'book-paid-repair' },
  { kind: 'see-open-claim', claimNumber: 'C8H2M4T6V' },
  { kind: 'open-claim', until: day('2027-12-13') },
];

function everythingACustomerReads(country = 'GB'): string[] {
  const local = { ...format, country };
  return [
    ...samples.map(({ reason }) => sentence(reason, local)),
    ...steps.map((step) => nextStepSentence(step, local)),
    ...ANSWERS.map((answer) => `${answerHeading({ answer, nextStep: null })}.`),
    ...RULINGS.flatMap((ruling) =>
      [null, '£42.00'].map((offeredPrice) =>
        rulingSentence(ruling, { repairWithin: '3 working days', offeredPrice, returnPrice: '£6.40' }),
      ),
    ),
    ...RULINGS.flatMap((ruling) =>
      (['accepted', 'declined'] as const).map((answer) =>
        rulingSentence(ruling, {
          repairWithin: '3 working days',
          offeredPrice: '£42.00',
          returnPrice: '£6.40',
          answer,
        }),
      ),
    ),
    ...(['fault', 'no-fault'] as const).map((afterCover) =>
      rulingSentence('not-covered', {
        repairWithin: '3 working days',
        offeredPrice: null,
        returnPrice: 'free',
        afterCover,
      }),
    ),
    contestSentence('2 working days'),
    ...RULINGS.flatMap((ruling) =>
      (['repaired', 'stopped', 'stopped-left', 'left', 'kept'] as const).map((end) =>
        rulingSentence(ruling, {
          repairWithin: '3 working days',
          offeredPrice: null,
          returnPrice: 'free',
          end,
        }),
      ),
    ),
  ];
}

describe('reasons in words', () => {
  it.each(samples.map(({ reason, says }) => ({ code: reason.code, reason, says })))(
    '$code',
    ({ reason, says }) => {
      expect(sentence(reason, format)).toBe(says);
    },
  );

  it('a line that ended on a working day is told its end alone', () => {
    const ended = { ...spoken['line-ended'].reason, lastClaimDay: day('2027-12-12') };
    expect(sentence(ended, format)).toBe('Cover for “USB socket soldered” ended on 12 Dec 2027.');
  });

  it.each([
    ['HHW-20417-C', '17C'],
    ['QA0031', '31'],
    ['42', '2'],
  ])('of the serial %s a stranger learns only %s', (whole, ending) => {
    expect(serialEnding(whole)).toBe(ending);
  });

  it('each country has its own sentence on rights by law', () => {
    const said = ['GB', 'DE', 'US', 'JP'].map((country) =>
      sentence({ code: 'rights-by-law' }, { ...format, country }),
    );
    expect(new Set(said).size).toBe(4);
    for (const text of said) expect(text).toMatch(/^Your rights by law stay open\./);
  });
});

describe('the next step', () => {
  const opening: NextStep[] = [
    { kind: 'send-serial-photo' },
    { kind: 'ask-a-person', until: day('2027-12-27') },
    { kind: 'open-claim', until: day('2027-12-13') },
  ];
  it.each(opening)('$kind sends no cell in doubt by post, and still opens the claim', (step) => {
    const told = nextStepSentence(step, format, true);
    expect(told).toContain('Please do not post the unit.');
    expect(told).toContain('pen your claim');
    expect(told).not.toContain('post the unit to us');
    expect(readingGrade(told)).toBeLessThan(7);
  });

  it.each(steps.map((step) => ({ kind: step.kind, step })))('$kind says what it costs', ({ step }) => {
    expect(nextStepSentence(step, format)).toMatch(/free|£|nothing to pay/);
  });

  it.each(steps.map((step) => ({ kind: step.kind, step })))('$kind says when', ({ step }) => {
    expect(nextStepSentence(step, format)).toMatch(/at once|2 working days|now/);
  });

  it.each([{ kind: 'send-serial-photo' }, { kind: 'ask-a-person', until: day('2027-12-27') }] as const)(
    '$kind promises no answer before the unit is here, and names its postage',
    (step) => {
      const told = nextStepSentence(step, format);
      expect(told).toContain('within 2 working days after it arrives');
      expect(told).toContain('Postage to us: £6.40.');
    },
  );

  it('whoever did not open the claim that is open is told to write', () => {
    expect(nextStepSentence({ kind: 'see-open-claim', claimNumber: 'C8H2M4T6V' }, format)).toContain(
      'Was it somebody else, for instance who had the unit before you? Write to us',
    );
  });

  it('a paid repair is booked or asked about before anything is posted, and names the inspection fee', () => {
    const told = nextStepSentence({ kind: 'book-paid-repair' }, format);
    expect(told).toContain('Please do not post it yet.');
    expect(told).toContain('looking at it costs £18.00, and we say so first');
  });

  it('a paid repair names no fee where the workshop takes none', () => {
    const told = nextStepSentence({ kind: 'book-paid-repair' }, { ...format, inspectionFee: null });
    expect(told).not.toMatch(/costs|null/);
    expect(told).toMatch(/You can say no to any price\.$/);
  });

  it('a claim names its last day and both ways of postage', () => {
    const text = nextStepSentence({ kind: 'open-claim', until: day('2027-12-13') }, format);
    expect(text).toContain('by Monday 13 December 2027');
    expect(text).toContain('Postage to us: £6.40. Postage back: free.');
  });
});

describe('a ruling in words', () => {
  const ENDED = { repairWithin: '3 working days', offeredPrice: '£42.00', returnPrice: 'free' };

  it.each(RULINGS)('%s says what comes next and what it costs', (ruling) => {
    const text = rulingSentence(ruling, {
      repairWithin: '3 working days',
      offeredPrice: '£42.00',
      returnPrice: 'free',
    });
    expect(text).toMatch(/We put|We can repair|We send/);
    expect(text).toMatch(/pay nothing|£42\.00/);
  });

  it.each([
    ['fault', /^The cover had ended.*paid job/],
    ['no-fault', /^The cover had ended.*works as it should.*You pay nothing/],
  ] as const)('not covered because it came too late says so, with %s found', (afterCover, says) => {
    const text = rulingSentence('not-covered', {
      repairWithin: '3 working days',
      offeredPrice: null,
      returnPrice: 'free',
      afterCover,
    });
    expect(text).toMatch(says);
    expect(text).not.toContain('not part of the cover');
  });

  it.each([
    ['partly', 'accepted', 'you pay nothing for it. You said yes to a price: £42.00. That is for the rest'],
    ['partly', 'declined', 'you pay nothing for it. The rest we leave as it is, as you asked.'],
    ['covered', 'declined', 'you pay nothing for it. The rest we leave as it is, as you asked.'],
    ['not-covered', 'accepted', 'You said yes to a price: £42.00. We repair it as a paid job.'],
    ['not-covered', 'declined', 'You said no to a price, and we send it back. Sending it back: free.'],
    ['returned-free', 'declined', 'You pay nothing.'],
  ] as const)('%s, once the price is %s, no longer asks', (ruling, answer, says) => {
    const text = rulingSentence(ruling, {
      repairWithin: '3 working days',
      offeredPrice: '£42.00',
      returnPrice: 'free',
      answer,
    });
    expect(text).toContain(says);
    expect(text).not.toContain('You can say yes or no');
  });

  it.each(RULINGS)('%s announces nothing more once the claim has ended', (ruling) => {
    for (const end of ['repaired', 'stopped-left', 'left', 'kept'] as const)
      for (const answer of [undefined, 'accepted', 'declined'] as const) {
        const text = rulingSentence(ruling, { ...ENDED, answer, end });
        expect(text).not.toMatch(/within|We send|we send|We can|You can say|We repair\b|goes back/);
        expect(text).toMatch(/^(This is|Part of this is|On our bench)/);
      }
  });

  it('covered, a repair that was stopped promises none', () => {
    const text = rulingSentence('covered', { ...ENDED, end: 'stopped' });
    expect(text).toBe(
      'This is covered. The repair was stopped, and we wrote to you about it. The unit goes back unrepaired.',
    );
  });

  it.each([
    ['on-bench', false, false, null],
    ['declined', false, true, 'stopped'],
    ['declined', false, false, null],
    ['ready', true, false, 'repaired'],
    ['ready', false, false, null],
    ['closed', false, false, 'kept'],
    ['cancelled', false, false, 'kept'],
    ['unclaimed', true, false, 'repaired'],
    ['unclaimed', false, true, 'stopped'],
    ['unclaimed', false, false, null],
  ] as const)('at %s, repaired %s, stopped %s, its end is %s', (stage, isRepaired, isStopped, end) => {
    expect(claimEnd({ stage, isRepaired, isStopped, isGone: false })).toBe(end);
  });

  it.each([
    [true, false, 'repaired'],
    [false, true, 'stopped-left'],
    [false, false, 'left'],
  ] as const)('gone, repaired %s, stopped %s, its end is %s', (isRepaired, isStopped, end) => {
    for (const stage of ['sent-back', 'closed'] as const)
      expect(claimEnd({ stage, isRepaired, isStopped, isGone: true })).toBe(end);
  });

  it('without a price yet, the price comes first', () => {
    const text = rulingSentence('not-covered', {
      repairWithin: '3 working days',
      offeredPrice: null,
      returnPrice: '£6.40',
    });
    expect(text).toBe(
      'This is not part of the cover. We can repair it as a paid job. We send you a price first. You can say yes or no. If you say no, we send it back. Sending it back: £6.40.',
    );
  });

  it('a late claim in grace is headed by the person, not by the end', () => {
    expect(
      answerHeading({ answer: 'lapsed', nextStep: { kind: 'ask-a-person', until: day('2027-12-27') } }),
    ).toBe('A person will look at this');
  });

  it('staff are asked what would have caught it', () => {
    expect(CATCH_QUESTION).toBe('What would have caught this before it went back?');
  });
});

describe('the words a customer reads', () => {
  it.each(['GB', 'DE', 'US', 'JP'])('never turn away or blame (%s)', (country) => {
    for (const text of everythingACustomerReads(country))
      expect(text).not.toMatch(
        /reject|refus|den(y|ied)|invalid|void|your fault|you (broke|failed|misused|damaged)|misuse|user error|unfortunately|fraud/i,
      );
  });

  it('are read at eleven to twelve', () => {
    expect(readingGrade(everythingACustomerReads().join(' '))).toBeLessThan(6);
  });

  it.each(steps.map((step) => ({ kind: step.kind, step })))(
    'the step $kind is read at eleven to twelve',
    ({ step }) => {
      expect(readingGrade(nextStepSentence(step, format))).toBeLessThan(7);
    },
  );

  it('have no sentence of more than 25 words, except where a law is named', () => {
    const long = everythingACustomerReads()
      .flatMap((text) => text.split(/(?<=[.!?])\s/))
      .filter((one) => one.split(/\s+/).length > 25 && !one.includes('Act'));
    expect(long).toEqual([]);
  });
});

describe('the grade of a text', () => {
  it('is low for a nursery sentence and high for a lawyer’s', () => {
    expect(readingGrade('The cat sat on the mat.')).toBeLessThan(1);
    expect(
      readingGrade(
        'Notwithstanding the aforementioned limitations, contractual obligations regarding conformity remain unaffected by commercial guarantees voluntarily undertaken.',
      ),
    ).toBeGreaterThan(18);
  });
});
