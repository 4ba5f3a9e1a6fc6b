import { day } from '@/lib/calendar/day';
import type { CertificateData } from '@/lib/documents/certificate';
import { certificateText } from '@/lib/warranty/rules/certificate-text';
import { countCover } from '@/lib/warranty/rules/cover';
import type { CoverLine, PolicyTerms } from '@/lib/warranty/rules/terms';

const terms: PolicyTerms = {
  startEvent: 'handed-to-carrier',
  workTerm: 'P12M',
  partsTerm: 'P12M',
  exclusions: ['Damage from a fall, a blow or liquid after the repair'],
  renewedMinimum: 'P90D',
  heldRule: 'whole-days',
  rollLastDay: true,
  graceDays: 14,
  transferable: true,
};
const issuedOn = day('2026-11-25');
const line = (id: string, kind: CoverLine['kind'], description: string): CoverLine => ({
  id,
  kind,
  description,
  symptoms: [],
  term: 'P12M',
  startsOn: issuedOn,
  renewedUntil: null,
});
const lines = [line('1', 'work', 'USB socket replaced, two pads rebuilt'), line('2', 'part', 'USB socket')];
const counts = lines.map((each) => ({
  line: each,
  count: countCover(each, [], terms, { weekend: [6, 7], closed: new Map() }),
}));
const workshop = {
  name: 'Quay & Alder',
  address: ['4 Harbour Steps', 'Sandmouth', 'QM2 1AA'],
  phone: '01632 960123',
  email: 'workshop@quayandalder.example.org',
};
const reading = (name: string, value: string, unit: string, limits: string) => ({
  name,
  reading: value,
  unit,
  limits,
  result: 'pass' as const,
  on: issuedOn,
  by: 'WR',
});

/** A certificate as long as most: two lines, the whole text of the rules and seven readings. */
export function sampleCertificate(serial: string): CertificateData {
  const unit = { model: 'Meridian Field Two', serial };
  const number = 'W7YVSQJZ4';
  const guarantor = { ...workshop, addressLines: workshop.address };
  const text = certificateText({
    number,
    revision: 1,
    issuedOn,
    unit,
    terms,
    guarantor,
    lines: counts,
    country: 'GB',
    territory: 'the United Kingdom',
    zoneLabel: 'London time',
    locale: 'en-GB',
    claimPage: 'quayandalder.example.org/certificate',
    postageToUs: 'free, we send a label',
    postageBack: 'free',
    answerWithin: '2 working days',
  });
  const endsOn = counts[0]?.count.end ?? issuedOn;
  return {
    setting: { paper: 'A4', locale: 'en-GB', made: new Date('2026-11-25T10:30:00Z') },
    workshop,
    number,
    revision: 1,
    replaces: null,
    issuedOn,
    job: 'J7YVSQJZ4',
    unit,
    checkUrl: `https://quayandalder.example.org/c/${'k'.repeat(300)}`,
    checkPage: 'quayandalder.example.org/certificate',
    coveredUntil: endsOn,
    lastClaimDay: counts[0]?.count.lastClaimDay ?? issuedOn,
    cover: counts.map(({ line: { description, term, startsOn }, count }) => ({
      what: description,
      term,
      from: startsOn,
      until: count.end,
    })),
    counted: ['Counted from the day it was handed to the carrier'],
    title: text.title,
    sections: text.sections,
    stamps: ['Booked', 'Arrived', 'On the bench', 'Proved', 'Sent back'].map((label) => ({
      label,
      day: issuedOn,
      state: 'done' as const,
    })),
    proof: {
      work: ['USB socket replaced, two pads rebuilt, anchors soldered.'],
      parts: [{ name: 'USB socket', quantity: 1, lot: 'Q-0412' }],
      wires: [],
      connectors: [],
      checkSheets: [{ repair: 'USB socket', version: 3 }],
      readings: [
        reading('Neighbouring pins open', '22 of 22', '', 'all open'),
        reading('Charging current', '0.92', 'A', '0.80 to 1.10 A'),
        reading('Supply voltage', '5.02', 'V', '4.75 to 5.25 V'),
        reading('Voltage at the battery', '4.19', 'V', '4.15 to 4.22 V'),
        reading('Resistance of the shell to ground', '0.09', 'Ω', '0 to 0.25 Ω'),
        reading('Solder fill of the anchors', '90', '%', '75 % or more'),
        reading('Records for half an hour', 'yes', '', 'yes'),
      ],
      technician: { initials: 'WR', provedOn: issuedOn },
    },
    payload: {
      token: 'k'.repeat(300),
      certificate: {
        keyId: 'k1',
        number,
        revision: 1,
        serial,
        issuedOn,
        lines: counts.map(({ line: { kind, term, startsOn }, count }) => ({
          kind,
          term,
          startsOn,
          endsOn: count.end,
        })),
      },
    },
  };
}
