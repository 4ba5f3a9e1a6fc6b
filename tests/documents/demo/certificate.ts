import { day } from '@/lib/calendar/day';
import type { CertificateData } from '@/lib/documents/certificate';
import { certificateText } from '@/lib/warranty/rules/certificate-text';
import { countCover } from '@/lib/warranty/rules/cover';
import { explainCount } from '@/lib/warranty/rules/cover-sentences';
import type { CoverLine, PolicyTerms } from '@/lib/warranty/rules/terms';
import { signedBy } from '@/tests/documents/signing';
import { job, setting, stamp, unit, workshop } from './shared';

const terms: PolicyTerms = {
  startEvent: 'handed-to-carrier',
  workTerm: 'P12M',
  partsTerm: 'P12M',
  exclusions: [
    'Damage from a fall, a blow or liquid after the repair',
    'A unit opened by someone else after the repair, where that caused the fault',
  ],
  renewedMinimum: 'P90D',
  heldRule: 'whole-days',
  rollLastDay: true,
  graceDays: 14,
  transferable: true,
};

const calendar = { weekend: [6, 7], closed: new Map<string, string>() };

const line = (id: string, kind: CoverLine['kind'], description: string): CoverLine => ({
  id,
  kind,
  description,
  symptoms: [],
  term: 'P12M',
  startsOn: day('2026-12-12'),
  renewedUntil: null,
});

export const coverLines: readonly CoverLine[] = [
  line('socket-work', 'work', 'USB socket replaced, four pads rebuilt'),
  line('socket', 'part', 'USB Type-C socket'),
];

/** A certificate of these lines, with the text the warranty rules give for it. */
export function certificateOf(lines: readonly CoverLine[]): CertificateData {
  const number = 'W7YVSQJZ4';
  const issuedOn = day('2026-12-12');
  const counts = lines.map((one) => ({ line: one, count: countCover(one, [], terms, calendar) }));
  const text = certificateText({
    number,
    revision: 2,
    issuedOn,
    guarantor: {
      name: workshop.name,
      addressLines: [...workshop.address],
      email: workshop.email ?? '',
      phone: workshop.phone,
    },
    unit,
    lines: counts,
    terms,
    territory: 'the United Kingdom and every country we post to',
    country: 'GB',
    zoneLabel: 'London time',
    locale: setting.locale,
    claimPage: 'quay-alder.example.org/claim',
    postageToUs: 'free, we send a label',
    postageBack: 'free',
    answerWithin: '2 working days',
  });
  const payload = signedBy({
    number,
    revision: 2,
    serial: unit.serial,
    issuedOn,
    lines: counts.map(({ line: { kind, term, startsOn }, count }) => ({
      kind,
      term,
      startsOn,
      endsOn: count.end,
    })),
  });
  const ends = counts.map(({ count }) => count.end).sort();
  const claims = counts.map(({ count }) => count.lastClaimDay).sort();
  return {
    setting,
    workshop,
    number,
    revision: 2,
    replaces: 1,
    issuedOn,
    job,
    unit,
    checkUrl: `https://quay-alder.example.org/w/${payload.token}`,
    checkPage: 'quay-alder.example.org/check',
    coveredUntil: ends.at(-1) ?? issuedOn,
    lastClaimDay: claims.at(-1) ?? issuedOn,
    cover: counts.map(({ line: one, count }) => ({
      what: one.description,
      term: one.term,
      from: one.startsOn,
      until: count.end,
    })),
    counted: [...new Set(counts.map(({ count }) => `${explainCount(count, setting.locale)}.`))],
    title: text.title,
    sections: text.sections,
    stamps: [
      stamp('Booked', '2026-12-03'),
      stamp('Arrived', '2026-12-07'),
      stamp('On the bench', '2026-12-09'),
      stamp('Proved', '2026-12-11'),
      stamp('Sent back', '2026-12-12'),
    ],
    proof: {
      work: [
        'Took out the torn USB socket and cleaned the board.',
        'Rebuilt four lifted pads with 0.1 mm enamelled wire and fixed them with resin.',
        'Fitted a new socket, both anchors soldered through.',
        'Cleaned, charged for two hours and recorded for 30 minutes.',
      ],
      parts: [
        { name: 'USB Type-C socket, 16 pins, mid-mount', quantity: 1, lot: 'HB-2611-04' },
        { name: 'Enamelled copper wire, 0.1 mm', quantity: 1, lot: 'WR-0093' },
      ],
      wires: [{ what: 'pad A6 to resistor R12, 30 mm of 0.1 mm wire', milliohms: 78, expected: 85.9 }],
      connectors: [
        {
          name: 'USB Type-C receptacle: every pin and neighbouring pair',
          lines: ['24 pins through, 29 of 30 pairs open', 'A4 VBUS and A5 CC1 read joined'],
          result: 'fail',
          on: day('2026-12-10'),
          by: 'MR',
        },
        {
          name: 'USB Type-C receptacle: every pin and neighbouring pair',
          lines: ['24 pins through, 30 pairs open'],
          result: 'pass',
          on: day('2026-12-11'),
          by: 'MR',
        },
      ],
      checkSheets: [{ repair: 'USB socket', version: 3 }],
      readings: [
        {
          name: 'Neighbouring pins open',
          reading: '22 of 22',
          unit: '',
          limits: 'all open',
          result: 'pass',
          on: day('2026-12-10'),
          by: 'MR',
        },
        {
          name: 'Jumper wire, pad A6',
          reading: '0.31',
          unit: 'Ω',
          limits: '0 to 0.25 Ω',
          result: 'fail',
          on: day('2026-12-10'),
          by: 'MR',
        },
        {
          name: 'Jumper wire, pad A6',
          reading: '0.09',
          unit: 'Ω',
          limits: '0 to 0.25 Ω',
          result: 'pass',
          on: day('2026-12-11'),
          by: 'MR',
        },
        {
          name: 'Charging current',
          reading: '0.92',
          unit: 'A',
          limits: '0.80 to 1.10 A',
          result: 'pass',
          on: day('2026-12-11'),
          by: 'MR',
        },
        {
          name: 'Voltage at the battery, charged',
          reading: '4.19',
          unit: 'V',
          limits: '4.15 to 4.22 V',
          result: 'pass',
          on: day('2026-12-11'),
          by: 'MR',
        },
        {
          name: 'Solder fill of the anchors',
          reading: '90',
          unit: '%',
          limits: '75 % or more',
          result: 'pass',
          on: day('2026-12-11'),
          by: 'MR',
        },
        {
          name: 'Records 30 minutes from the battery',
          reading: 'yes',
          unit: '',
          limits: 'yes',
          result: 'pass',
          on: day('2026-12-11'),
          by: 'JS',
        },
      ],
      technician: { initials: 'MR', provedOn: day('2026-12-11') },
    },
    payload,
  };
}

export const certificate: CertificateData = certificateOf(coverLines);
