import { describe, expect, it } from 'vitest';
import { day } from '@/lib/calendar/day';
import { type AssessedCertificate, assess, type ClaimFacts } from '@/lib/warranty/rules/assess';
import { ANSWERS, type Answer, type NextStep, type ReasonCode } from '@/lib/warranty/rules/reasons';
import { claimSymptoms } from '@/lib/warranty/rules/standing';
import type { CoverLine } from '@/lib/warranty/rules/terms';
import { someFacts, someLine, someTerms, stay } from '../made';

const OPEN = { number: 'C8H2M4T6V', openedOn: day('2027-02-20') };
const line = { lineId: 'usb', description: 'USB socket soldered' };

function certificate(changes: Partial<AssessedCertificate> = {}): AssessedCertificate {
  return {
    number: 'W4K7QX29D',
    serial: 'HHW-20417-C',
    revision: 1,
    issuedOn: day('2026-12-03'),
    lines: [someLine()],
    replacedBy: null,
    ...changes,
  };
}

type Row = {
  name: string;
  facts: Partial<ClaimFacts>;
  answer: Answer;
  step: NextStep['kind'] | null;
  codes: ReasonCode[];
};

/** Cover ends on Friday 3 December 2027; fourteen days of grace last until the 17th. */
const rows: Row[] = [
  {
    name: 'an unknown number is not recognised',
    facts: { certificate: null },
    answer: 'not-recognised',
    step: null,
    codes: ['number-unknown'],
  },
  {
    name: 'a signature that fails is not recognised, whatever else fits',
    facts: { signatureValid: false },
    answer: 'not-recognised',
    step: null,
    codes: ['signature-fails'],
  },
  {
    name: 'another serial is another unit',
    facts: { serial: 'different' },
    answer: 'other-unit',
    step: 'check-serial',
    codes: ['serial-differs'],
  },
  {
    name: 'a likely misread serial asks for a photo and decides nothing',
    facts: { serial: 'likely-misread' },
    answer: 'confirm-serial',
    step: 'send-serial-photo',
    codes: ['serial-close'],
  },
  {
    name: 'a fault of a running line is covered subject to inspection',
    facts: {},
    answer: 'covered-subject-to-inspection',
    step: 'open-claim',
    codes: ['serial-same', 'line-covers'],
  },
  {
    name: 'the last day itself is covered',
    facts: { today: day('2027-12-03') },
    answer: 'covered-subject-to-inspection',
    step: 'open-claim',
    codes: ['serial-same', 'line-covers'],
  },
  {
    name: 'the day after the last goes to a person while there is grace',
    facts: { today: day('2027-12-04') },
    answer: 'lapsed',
    step: 'ask-a-person',
    codes: ['serial-same', 'in-grace', 'rights-by-law'],
  },
  {
    name: 'the last day of grace still goes to a person',
    facts: { today: day('2027-12-17') },
    answer: 'lapsed',
    step: 'ask-a-person',
    codes: ['serial-same', 'in-grace', 'rights-by-law'],
  },
  {
    name: 'after the grace it is lapsed, with a paid repair and the rights by law',
    facts: { today: day('2027-12-18') },
    answer: 'lapsed',
    step: 'book-paid-repair',
    codes: ['serial-same', 'line-ended', 'rights-by-law'],
  },
  {
    name: 'without grace the day after the last is lapsed',
    facts: { today: day('2027-12-04'), terms: someTerms({ graceDays: 0 }) },
    answer: 'lapsed',
    step: 'book-paid-repair',
    codes: ['serial-same', 'line-ended', 'rights-by-law'],
  },
  {
    name: 'a fault of no line is outside cover and can be booked as a paid job',
    facts: { symptom: 'cracked screen' },
    answer: 'outside-cover',
    step: 'book-paid-repair',
    codes: ['serial-same', 'symptom-outside', 'rights-by-law'],
  },
  {
    name: 'a fault of no line on a certificate that has ended is lapsed first',
    facts: { symptom: 'cracked screen', today: day('2028-03-01') },
    answer: 'lapsed',
    step: 'book-paid-repair',
    codes: ['serial-same', 'line-ended', 'rights-by-law'],
  },
  {
    name: 'an open claim is shown and no second one offered',
    facts: { openClaim: OPEN },
    answer: 'already-open',
    step: 'see-open-claim',
    codes: ['serial-same', 'open-claim'],
  },
  {
    name: 'an open claim opened in time does not lapse while we have the unit',
    facts: { openClaim: OPEN, today: day('2028-03-01') },
    answer: 'already-open',
    step: 'see-open-claim',
    codes: ['serial-same', 'open-claim'],
  },
  {
    name: 'an open claim in its days of grace already lies with a person',
    facts: { openClaim: { ...OPEN, openedOn: day('2027-12-10') }, today: day('2027-12-12') },
    answer: 'already-open',
    step: 'see-open-claim',
    codes: ['serial-same', 'open-claim'],
  },
  {
    name: 'another fault during an open claim is told there, not sent in a second parcel',
    facts: { openClaim: OPEN, symptom: 'cracked screen' },
    answer: 'outside-cover',
    step: 'see-open-claim',
    codes: ['serial-same', 'symptom-outside', 'open-claim', 'rights-by-law'],
  },
  {
    name: 'another serial is stronger than an open claim',
    facts: { openClaim: OPEN, serial: 'different' },
    answer: 'other-unit',
    step: 'check-serial',
    codes: ['serial-differs'],
  },
  {
    name: 'something else is never turned away by a list',
    facts: { symptom: 'other' },
    answer: 'covered-subject-to-inspection',
    step: 'open-claim',
    codes: ['serial-same', 'symptom-unlisted', 'line-covers'],
  },
  {
    name: 'a line without a list of symptoms cannot be ruled out by one',
    facts: { certificate: certificate({ lines: [someLine({ symptoms: [] })] }), symptom: 'cracked screen' },
    answer: 'covered-subject-to-inspection',
    step: 'open-claim',
    codes: ['serial-same', 'line-covers'],
  },
  {
    name: 'capitals and spaces around a symptom do not matter',
    facts: { symptom: '  Does Not Charge ' },
    answer: 'covered-subject-to-inspection',
    step: 'open-claim',
    codes: ['serial-same', 'line-covers'],
  },
];

describe('the preliminary answer', () => {
  it.each(rows)('$name', ({ facts, answer, step, codes }) => {
    const assessment = assess(someFacts(facts));
    expect({
      answer: assessment.answer,
      step: assessment.nextStep?.kind ?? null,
      codes: assessment.reasons.map(({ code }) => code),
    }).toEqual({ answer, step, codes });
  });

  it('has a row above for every answer', () => {
    expect(new Set(rows.map(({ answer }) => answer))).toEqual(new Set(ANSWERS));
  });

  it('leads somewhere unless the certificate is not recognised', () => {
    for (const { facts } of rows) {
      const { answer, nextStep } = assess(someFacts(facts));
      expect(nextStep === null).toBe(answer === 'not-recognised');
    }
  });
});

describe('stronger grounds win over weaker ones', () => {
  // Each fact alone gives its answer; all of them together give the strongest, and taking that one away the next.
  const ladder: { answer: Answer; facts: Partial<ClaimFacts> }[] = [
    { answer: 'not-recognised', facts: { signatureValid: false } },
    { answer: 'other-unit', facts: { serial: 'different' } },
    { answer: 'lapsed', facts: { today: day('2028-03-01') } },
    { answer: 'outside-cover', facts: { symptom: 'cracked screen' } },
    { answer: 'already-open', facts: { openClaim: { ...OPEN, openedOn: day('2028-02-20') } } },
  ];
  it.each(ladder.map(({ answer }, i) => ({ answer, i })))('$answer', ({ answer, i }) => {
    const facts: Partial<ClaimFacts> = Object.assign({}, ...ladder.slice(i).map((step) => step.facts));
    expect(assess(someFacts(facts)).answer).toBe(answer);
  });

  it('a misread serial stands between another unit and a lapsed certificate', () => {
    const facts = { serial: 'likely-misread', today: day('2028-03-01') } as const;
    expect(assess(someFacts(facts)).answer).toBe('confirm-serial');
  });
});

describe('the facts in the reasons', () => {
  it('a running line is named with its end', () => {
    const { reasons, needs, nextStep } = assess(someFacts());
    expect(reasons).toEqual([
      { code: 'serial-same', serial: 'HHW-20417-C' },
      { code: 'line-covers', ...line, endsOn: '2027-12-03' },
    ]);
    expect(needs).toEqual(['inspection']);
    expect(nextStep).toEqual({ kind: 'open-claim', until: '2027-12-03' });
  });

  it('a promise that does not pass to a new owner says so wherever a claim can be opened', () => {
    const terms = someTerms({ transferable: false });
    const codes = (over: Parameters<typeof someFacts>[0]) =>
      assess(someFacts({ terms, ...over })).reasons.map(({ code }) => code);
    expect(codes({})).toContain('first-customer-only');
    expect(codes({ today: day('2027-12-08') })).toEqual(
      expect.arrayContaining(['in-grace', 'first-customer-only']),
    );
    expect(codes({ today: day('2028-12-08') })).not.toContain('first-customer-only');
    expect(codes({ terms: someTerms() })).not.toContain('first-customer-only');
  });

  it('days given back move the end that is named, and the next step names the moved last day', () => {
    const { reasons, nextStep } = assess(someFacts({ held: [stay('2027-01-05', '2027-01-14')] }));
    expect(reasons.at(-1)).toEqual({ code: 'line-covers', ...line, endsOn: '2027-12-12' });
    // 12 December 2027 is a Sunday.
    expect(nextStep).toEqual({ kind: 'open-claim', until: '2027-12-13' });
  });

  it('on a closed day after the end, the moved last day is the reason', () => {
    const facts = someFacts({ held: [stay('2027-01-05', '2027-01-14')], today: day('2027-12-13') });
    const { answer, reasons } = assess(facts);
    expect(answer).toBe('covered-subject-to-inspection');
    expect(reasons.at(-1)).toEqual({
      code: 'last-day-moved',
      ...line,
      endedOn: '2027-12-12',
      lastClaimDay: '2027-12-13',
    });
  });

  it('a lapsed line is named with its end and its last claim day', () => {
    const facts = someFacts({
      held: [stay('2027-01-05', '2027-01-14')],
      today: day('2027-12-14'),
      terms: someTerms({ graceDays: 0 }),
    });
    expect(assess(facts).reasons[1]).toEqual({
      code: 'line-ended',
      ...line,
      endedOn: '2027-12-12',
      lastClaimDay: '2027-12-13',
    });
  });

  it('grace is named with the day until which a person can be asked', () => {
    const { reasons, needs, nextStep } = assess(someFacts({ today: day('2027-12-04') }));
    expect(reasons[1]).toEqual({
      code: 'in-grace',
      ...line,
      endedOn: '2027-12-03',
      graceUntil: '2027-12-17',
    });
    expect(needs).toEqual(['person-decides']);
    expect(nextStep).toEqual({ kind: 'ask-a-person', until: '2027-12-17' });
  });

  it('a paid job needs a yes to the fee, and a misread serial a photo and a person', () => {
    expect(assess(someFacts({ symptom: 'cracked screen' })).needs).toEqual(['fee-agreed']);
    expect(assess(someFacts({ serial: 'likely-misread' })).needs).toEqual([
      'serial-photo',
      'person-confirms-serial',
    ]);
    expect(assess(someFacts({ symptom: 'other' })).needs).toEqual(['symptom-described', 'inspection']);
  });

  it('the open claim is named with its day', () => {
    const { reasons, needs, nextStep } = assess(someFacts({ openClaim: OPEN }));
    expect(reasons[1]).toEqual({ code: 'open-claim', claimNumber: 'C8H2M4T6V', openedOn: '2027-02-20' });
    expect(needs).toEqual([]);
    expect(nextStep).toEqual({ kind: 'see-open-claim', claimNumber: 'C8H2M4T6V' });
  });
});

describe('a certificate with work and parts of their own terms', () => {
  const lines = [
    someLine({ id: 'work', term: 'P90D', symptoms: ['loose plug', 'does not charge'] }),
    someLine({ id: 'part', kind: 'part', term: 'P12M', symptoms: ['does not charge'] }),
  ];
  const asked = (symptom: string) =>
    assess(someFacts({ certificate: certificate({ lines }), symptom, today: day('2027-06-01') }));

  it('a fault that fits both is covered while one of them runs', () => {
    const { answer, reasons } = asked('does not charge');
    expect(answer).toBe('covered-subject-to-inspection');
    expect(reasons.slice(1)).toEqual([
      { code: 'line-covers', lineId: 'part', description: line.description, endsOn: '2027-12-03' },
    ]);
  });

  it('a fault of the ended line alone is lapsed though another line still runs', () => {
    expect(asked('loose plug').answer).toBe('lapsed');
  });

  // The work ends on Wednesday 3 March 2027, the part on Friday 3 December; its days of grace on the 17th.
  const [work, part] = lines;
  const both = [
    ['as they stand', lines],
    ['the other way round', lines.toReversed()],
  ] as const;
  const on = (today: string, ofThese: readonly CoverLine[]) =>
    assess(someFacts({ certificate: certificate({ lines: [...ofThese] }), today: day(today) }));

  it.each(both)('while both run, a claim can be opened as long as the later one does, lines %s', (_, all) => {
    const { reasons, nextStep } = on('2027-03-01', all);
    expect(reasons.map(({ code }) => code)).toEqual(['serial-same', 'line-covers', 'line-covers']);
    expect(nextStep).toEqual({ kind: 'open-claim', until: '2027-12-03' });
  });

  it.each(both)('with one in grace, each is told as it stands, lines %s', (_, all) => {
    const { answer, reasons, nextStep } = on('2027-12-10', all);
    const { description } = line;
    expect(answer).toBe('lapsed');
    expect(reasons.slice(1).toSorted((a, b) => (a.code < b.code ? 1 : -1))).toEqual([
      { code: 'rights-by-law' },
      { code: 'line-ended', lineId: 'work', description, endedOn: '2027-03-03', lastClaimDay: '2027-03-03' },
      { code: 'in-grace', lineId: 'part', description, endedOn: '2027-12-03', graceUntil: '2027-12-17' },
    ]);
    expect(nextStep).toEqual({ kind: 'ask-a-person', until: '2027-12-17' });
  });

  it('with two in grace, a person can be asked until the later one’s ends', () => {
    const earlier = someLine({ id: 'earlier', startsOn: day('2026-12-01') });
    for (const all of [
      [part, earlier],
      [earlier, part],
      [earlier, work, part],
    ] as CoverLine[][]) {
      const { reasons, nextStep } = on('2027-12-10', all);
      const ends = reasons.flatMap((each) => (each.code === 'in-grace' ? [each.graceUntil] : []));
      expect(ends.toSorted()).toEqual(['2027-12-15', '2027-12-17']);
      expect(nextStep).toEqual({ kind: 'ask-a-person', until: '2027-12-17' });
    }
  });
});

describe('a certificate that was replaced', () => {
  const replacedBy = {
    revision: 2,
    issuedOn: day('2027-11-20'),
    lines: [someLine({ renewedUntil: day('2028-02-18') })],
  };

  it('is assessed on the revision in force, and the reason says so', () => {
    const facts = someFacts({ certificate: certificate({ replacedBy }), today: day('2028-01-31') });
    const { answer, reasons } = assess(facts);
    expect(answer).toBe('covered-subject-to-inspection');
    expect(reasons).toEqual([
      { code: 'serial-same', serial: 'HHW-20417-C' },
      { code: 'superseded', asked: 1, assessed: 2, replacedOn: '2027-11-20' },
      { code: 'line-covers', ...line, endsOn: '2028-02-18' },
    ]);
  });

  it('says so as well when the revision in force has ended', () => {
    const facts = someFacts({ certificate: certificate({ replacedBy }), today: day('2028-06-01') });
    expect(assess(facts).reasons.map(({ code }) => code)).toEqual([
      'serial-same',
      'superseded',
      'line-ended',
      'rights-by-law',
    ]);
  });
});

describe('what a claim is made of', () => {
  it('is chosen from what the lines cover, then from what else is known of the model, each once', () => {
    const lines = [{ symptoms: ['No charge', 'Loose plug'] }, { symptoms: ['no charge '] }];
    expect(
      claimSymptoms(lines, [
        ['NO CHARGE', 'Dark display'],
        ['Other', 'Dark display'],
      ]),
    ).toEqual(['No charge', 'Loose plug', 'Dark display']);
  });
});
