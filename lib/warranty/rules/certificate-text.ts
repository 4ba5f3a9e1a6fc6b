import { formatDay } from '@/lib/calendar/format';
import { showNumber } from '@/lib/numbers/job-number';
import type { CertificateFacts, Section } from './certificate-facts';
import { claimSteps, countingRule, exclusionsSection, linesSection, whatWeDo } from './certificate-sections';
import { legalRights, regimeOf } from './legal-rights';
import type { PolicyTerms } from './terms';

export type CertificateText = { title: string; subtitle: string; sections: Section[] };

/**
 * Everything a certificate has to say, in reading order, from plain data. What each published list asks for, and where it
 * stands, is in certificate-requirements.ts. Refuses a certificate without cover lines, guarantor or territory, since
 * such a paper would promise nothing. Example: country 'US' is titled 'Limited warranty certificate'.
 */
export function certificateText(facts: CertificateFacts): CertificateText {
  refuseGaps(facts);
  const sections: Section[] = [
    guarantorSection(facts),
    {
      key: 'unit',
      heading: 'The unit',
      paragraphs: [`${facts.unit.model}, serial ${facts.unit.serial}. The promise goes with this unit only.`],
    },
    linesSection(facts.lines, facts.locale),
    {
      key: 'counting',
      heading: 'How the days are counted',
      paragraphs: countingRule(facts.terms, facts.zoneLabel),
    },
    exclusionsSection(facts.terms),
    whatWeDo(facts),
    claimSteps(facts),
    whoSection(facts.terms),
    {
      key: 'territory',
      heading: 'Where it holds',
      paragraphs: [`This promise holds in ${facts.territory}.`],
    },
    {
      key: 'disagreement',
      heading: 'If you do not agree',
      paragraphs: [
        'You can contest a ruling once, free of charge, on the private link of your claim. The owner then looks again. This does not stop you from going to a court or to an advice or arbitration service of your country.',
      ],
    },
    ...limitsSection(facts.country),
    {
      key: 'legal-rights',
      heading: 'Your rights by law',
      paragraphs: legalRights(facts.country),
    },
  ];
  // 15 USC 2303 wants a written warranty called "Full" or "Limited"; one with exclusions and an end is limited (from memory).
  const title = regimeOf(facts.country) === 'US' ? 'Limited warranty certificate' : 'Warranty certificate';
  const subtitle = `${showNumber(facts.number)}, revision ${facts.revision}, issued ${formatDay(facts.issuedOn, facts.locale, 'short')}`;
  return { title, subtitle, sections };
}

function refuseGaps(facts: CertificateFacts): void {
  if (facts.lines.length === 0) throw new RangeError('A certificate without cover lines promises nothing');
  const { name, addressLines, email } = facts.guarantor;
  if (name.trim() === '' || addressLines.every((line) => line.trim() === '') || email.trim() === '')
    throw new RangeError('A certificate names who stands behind it, with address and e-mail');
  if (facts.territory.trim() === '') throw new RangeError('A certificate says where it holds');
}

function guarantorSection({ guarantor }: CertificateFacts): Section {
  const reach =
    guarantor.phone === null ? guarantor.email : `${guarantor.email}, telephone ${guarantor.phone}`;
  return {
    key: 'guarantor',
    heading: 'Who stands behind this',
    paragraphs: [
      `${guarantor.name}, ${guarantor.addressLines.filter((line) => line.trim() !== '').join(', ')}.`,
      `You reach us at ${reach}.`,
    ],
  };
}

function whoSection({ transferable }: PolicyTerms): Section {
  return {
    key: 'who',
    heading: 'Who can use it',
    paragraphs: [
      transferable
        ? 'The promise goes with the unit: whoever owns it can use this certificate, and nothing has to be signed over.'
        : 'The promise is made to the customer who sent the unit in. It does not pass to a new owner. What a new owner has by law is not touched.',
    ],
  };
}

// 16 CFR 701.3(a)(7)-(8) ask for two further sentences only where a warranty sets such limits; ours sets none.
function limitsSection(country: string): Section[] {
  if (regimeOf(country) !== 'US') return [];
  return [
    {
      key: 'limits',
      heading: 'No further limits',
      paragraphs: [
        'This warranty does not limit how long an implied warranty lasts. It does not exclude or limit incidental or consequential damages.',
      ],
    },
  ];
}

/** For staff beside the policy's terms, never on the certificate. */
export const STAFF_NOTE =
  'These texts are templates, not legal advice. Have these terms checked by a lawyer who knows the law where you and your customers are, and again when the law changes.';
