import { describe, expect, it } from 'vitest';
import { day } from '@/lib/calendar/day';
import { type CertificateFacts, SECTION_KEYS, type SectionKey } from '@/lib/warranty/rules/certificate-facts';
import { CERTIFICATE_REQUIREMENTS } from '@/lib/warranty/rules/certificate-requirements';
import { certificateText, STAFF_NOTE } from '@/lib/warranty/rules/certificate-text';
import { countCover } from '@/lib/warranty/rules/cover';
import { regimeOf } from '@/lib/warranty/rules/legal-rights';
import { HELD_RULES, type PolicyTerms, START_EVENTS } from '@/lib/warranty/rules/terms';
import { ENGLAND, someLine, someTerms } from '../made';

function facts(changes: Partial<CertificateFacts> = {}): CertificateFacts {
  const terms = changes.terms ?? someTerms();
  const line = someLine();
  return {
    number: 'W4K7QX29D',
    revision: 1,
    issuedOn: day('2026-12-03'),
    guarantor: {
      name: 'Quay & Alder',
      addressLines: ['3 Ropewalk', 'Sandmouth', 'QM1 4QA'],
      email: 'bench@example.org',
      phone: '01632 960142',
    },
    unit: { model: 'Heron HW-2 field recorder', serial: 'HHW-20417-C' },
    lines: [{ line, count: countCover(line, [], terms, ENGLAND) }],
    terms,
    territory: 'the United Kingdom',
    country: 'GB',
    zoneLabel: 'London time',
    locale: 'en-GB',
    claimPage: 'repairs.example.org/warranty',
    postageToUs: '£6.40',
    postageBack: 'free',
    answerWithin: '2 working days',
    ...changes,
  };
}

function textOf(key: SectionKey, changes: Partial<CertificateFacts> = {}): string {
  const section = certificateText(facts(changes)).sections.find((one) => one.key === key);
  return [...(section?.paragraphs ?? []), ...(section?.items?.texts ?? [])].join('\n');
}

function withTerms(changes: Partial<PolicyTerms>): Partial<CertificateFacts> {
  return { terms: someTerms(changes) };
}

const COUNTRY_OF = {
  'Directive (EU) 2019/771 Art. 17(2)': 'DE',
  '16 CFR 701.3(a)': 'US',
  'Consumer Rights Act 2015 s.30': 'GB',
} as const;

describe('what published lists ask of a certificate', () => {
  const mentions: Record<string, RegExp> = {
    'Directive (EU) 2019/771 Art. 17(2) (a)': /free of charge.*does not affect/s,
    'Directive (EU) 2019/771 Art. 17(2) (b)': /Quay & Alder, 3 Ropewalk, Sandmouth/,
    'Directive (EU) 2019/771 Art. 17(2) (c)': /open the claim.*post the unit/is,
    'Directive (EU) 2019/771 Art. 17(2) (d)': /Heron HW-2 field recorder, serial HHW-20417-C/,
    'Directive (EU) 2019/771 Art. 17(2) (e) duration': /until the end of Friday 3 December 2027/,
    'Directive (EU) 2019/771 Art. 17(2) (e) territory': /the United Kingdom/,
    '16 CFR 701.3(a) (1)': /whoever owns it/,
    '16 CFR 701.3(a) (2) covered': /USB socket soldered/,
    '16 CFR 701.3(a) (2) excluded': /Liquid that got in/,
    '16 CFR 701.3(a) (3)': /Inspection, work and parts for that cost you nothing/,
    '16 CFR 701.3(a) (4) start': /starts with the day we hand the unit to the carrier/,
    '16 CFR 701.3(a) (4) duration': /12 months from/,
    '16 CFR 701.3(a) (5) steps': /type its number/,
    '16 CFR 701.3(a) (5) address': /3 Ropewalk, Sandmouth, QM1 4QA/,
    '16 CFR 701.3(a) (6)': /contest a ruling once/,
    '16 CFR 701.3(a) (7)': /does not limit how long an implied warranty lasts/,
    '16 CFR 701.3(a) (8)': /does not exclude or limit incidental or consequential damages/,
    '16 CFR 701.3(a) (9)':
      /This warranty gives you specific legal rights, and you may also have other rights which vary from State to State\./,
    'Consumer Rights Act 2015 s.30 (4)(a)': /Scan the code/,
    'Consumer Rights Act 2015 s.30 (4)(b)': /does not take any of them away/,
    'Consumer Rights Act 2015 s.30 (5)(a)': /Quay & Alder, 3 Ropewalk/,
    'Consumer Rights Act 2015 s.30 (5)(b) duration': /3 December 2027/,
    'Consumer Rights Act 2015 s.30 (5)(b) territory': /the United Kingdom/,
  };

  it.each(CERTIFICATE_REQUIREMENTS.map((asked) => ({ ...asked })))(
    '$source $item: $asks, in the section $section',
    ({ source, item, section }) => {
      const expected = mentions[`${source} ${item}`];
      expect(expected).toBeDefined();
      if (expected) expect(textOf(section, { country: COUNTRY_OF[source] })).toMatch(expected);
    },
  );

  it('has a place for each of the nine items of 16 CFR 701.3(a) and the five of Art. 17(2)', () => {
    const heads = (source: string) =>
      new Set(
        CERTIFICATE_REQUIREMENTS.filter((one) => one.source === source).map((one) => one.item.split(' ')[0]),
      );
    expect([...heads('16 CFR 701.3(a)')]).toEqual([
      '(1)',
      '(2)',
      '(3)',
      '(4)',
      '(5)',
      '(6)',
      '(7)',
      '(8)',
      '(9)',
    ]);
    expect([...heads('Directive (EU) 2019/771 Art. 17(2)')]).toEqual(['(a)', '(b)', '(c)', '(d)', '(e)']);
  });
});

describe('the certificate', () => {
  it.each(['GB', 'DE', 'JP'])('has every section but the limits in %s, in one order', (country) => {
    expect(certificateText(facts({ country })).sections.map(({ key }) => key)).toEqual(
      SECTION_KEYS.filter((key) => key !== 'limits'),
    );
  });

  it('has every section in the US, and is titled limited', () => {
    const { title, sections } = certificateText(facts({ country: 'US' }));
    expect(sections.map(({ key }) => key)).toEqual([...SECTION_KEYS]);
    expect(title).toBe('Limited warranty certificate');
  });

  it('is headed by its number, revision and day', () => {
    expect(certificateText(facts()).subtitle).toBe('W-4K7Q-X29D, revision 1, issued 3 Dec 2026');
  });

  it('shows each line with its own count', () => {
    expect(textOf('cover')).toContain(
      'Work: USB socket soldered. Covered until the end of Friday 3 December 2027 (12 months from 3 Dec 2026 ends 3 Dec 2027).',
    );
  });

  it('leaves no section empty, for any country, start event or rule for held days', () => {
    for (const country of ['GB', 'FR', 'US', 'NZ'])
      for (const startEvent of START_EVENTS)
        for (const heldRule of HELD_RULES)
          for (const section of certificateText(facts({ country, ...withTerms({ startEvent, heldRule }) }))
            .sections)
            for (const text of [section.heading, ...section.paragraphs, ...(section.items?.texts ?? [])])
              expect(text.trim()).not.toBe('');
  });

  it('never shows the note for staff', () => {
    expect(STAFF_NOTE).toMatch(/lawyer/);
    const whole = JSON.stringify(
      ['GB', 'DE', 'US', 'JP'].map((country) => certificateText(facts({ country }))),
    );
    expect(whole).not.toMatch(/lawyer|template/i);
  });

  it('names no state and no foreign law in the sentence of a country', () => {
    expect(textOf('legal-rights', { country: 'DE' })).not.toMatch(/State to State|Consumer Rights Act/);
    expect(textOf('legal-rights', { country: 'GB' })).toMatch(/section 49.*section 55.*section 56/s);
    expect(textOf('legal-rights', { country: 'US' })).not.toMatch(/Consumer Rights Act/);
  });

  it.each(['GB', 'DE', 'US', 'JP'])('says in %s that rights by law do not end with it', (country) => {
    expect(textOf('legal-rights', { country })).toMatch(/do not end (on the day|with it)/);
  });

  it('leaves out a telephone that is not there', () => {
    const guarantor = { ...facts().guarantor, phone: null };
    expect(textOf('guarantor', { guarantor })).toContain('You reach us at bench@example.org.');
  });

  it('is refused without lines, without an address and without a territory', () => {
    expect(() => certificateText(facts({ lines: [] }))).toThrow(/promises nothing/);
    expect(() =>
      certificateText(facts({ guarantor: { ...facts().guarantor, addressLines: [' '] } })),
    ).toThrow(/address/);
    expect(() => certificateText(facts({ territory: '' }))).toThrow(/where it holds/);
  });
});

describe('the counting rule on the certificate', () => {
  const counted = (changes: Partial<PolicyTerms>) => textOf('counting', withTerms(changes));

  it('says when cover starts, in the words of the start event', () => {
    expect(counted({ startEvent: 'handed-to-carrier' })).toContain('the day we hand the unit to the carrier');
    expect(counted({ startEvent: 'delivered' })).toContain(
      'starts with the latest usual day of delivery, or the day you collect the unit.',
    );
    expect(counted({ startEvent: 'collected' })).toContain('the day you collect the unit');
  });

  it('says until when on the last day, in which zone, and that a claim counts from its opening', () => {
    expect(counted({})).toContain('until 24:00 on its last day, London time');
    expect(counted({})).toContain('A claim counts from the day you open it');
  });

  it('says what happens to days held, one sentence for each rule', () => {
    const said = HELD_RULES.map((heldRule) => counted({ heldRule }));
    expect(new Set(said).size).toBe(HELD_RULES.length);
    expect(counted({ heldRule: 'from-seven-days' })).toContain('7 days or more');
    expect(counted({ heldRule: 'two-months-from-return' })).toContain(
      '2 months after you have the unit back',
    );
  });

  it('speaks of rolling, grace and renewal only where the terms have them', () => {
    expect(counted({})).toMatch(/on which we are closed/);
    expect(counted({})).toMatch(/up to 14 days late/);
    expect(counted({})).toMatch(/for 90 days from the day you have the unit back/);
    const bare = counted({ rollLastDay: false, graceDays: 0, renewedMinimum: null });
    expect(bare).not.toMatch(/closed|late|whichever is longer/);
  });

  it('says when the promise does not pass to a new owner, and leaves their rights by law alone', () => {
    expect(textOf('who', withTerms({ transferable: false }))).toMatch(
      /does not pass to a new owner.*by law is not touched/,
    );
  });

  it('says when only work, or only parts, are covered', () => {
    expect(textOf('exclusions', withTerms({ partsTerm: null }))).toContain('only the work');
    expect(textOf('exclusions', withTerms({ workTerm: null }))).toContain('only the parts');
    expect(textOf('exclusions', withTerms({ exclusions: [] }))).not.toContain('Also not covered');
  });
});

describe('the regime of a country', () => {
  it('knows the 27 member states, Great Britain, the US, and everybody else', () => {
    expect(['DE', 'fr', ' PL ', 'IE'].map(regimeOf)).toEqual(['EU', 'EU', 'EU', 'EU']);
    expect(['GB', 'US', 'CH', 'JP', ''].map(regimeOf)).toEqual(['GB', 'US', 'other', 'other', 'other']);
  });
});
