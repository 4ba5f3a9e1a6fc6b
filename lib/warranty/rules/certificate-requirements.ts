import type { SectionKey } from './certificate-facts';

export type Requirement = {
  source: 'Directive (EU) 2019/771 Art. 17(2)' | '16 CFR 701.3(a)' | 'Consumer Rights Act 2015 s.30';
  item: string;
  asks: string;
  section: SectionKey;
};

/**
 * What published lists ask of a written warranty, and the section of the certificate that answers it. The lists are written
 * for goods; a certificate about a repair takes them as its pattern. Art. 17(2) was read in its German form, BGB 479;
 * 701.3(a)(6) to (8) and
 * the letters within s.30 are from memory.
 */
export const CERTIFICATE_REQUIREMENTS: readonly Requirement[] = [
  eu('(a)', 'legal remedies are free of charge and not affected', 'legal-rights'),
  eu('(b)', 'name and address of the guarantor', 'guarantor'),
  eu('(c)', 'the procedure to follow', 'how-to-claim'),
  eu('(d)', 'the goods it applies to', 'unit'),
  eu('(e) duration', 'its terms: how long it lasts', 'cover'),
  eu('(e) territory', 'its terms: where it holds', 'territory'),
  us('(1)', 'who is covered, if limited', 'who'),
  us('(2) covered', 'what is covered', 'cover'),
  us('(2) excluded', 'what is excluded', 'exclusions'),
  us('(3)', 'what the warrantor will do and pay for, and not', 'what-we-do'),
  us('(4) start', 'when the term starts', 'counting'),
  us('(4) duration', 'how long it lasts', 'cover'),
  us('(5) steps', 'the procedure, step by step', 'how-to-claim'),
  us('(5) address', 'name and mailing address of the warrantor', 'guarantor'),
  us('(6)', 'any informal way to settle a dispute', 'disagreement'),
  us('(7)', 'limits on how long implied warranties last', 'limits'),
  us('(8)', 'exclusion of incidental or consequential damages', 'limits'),
  us('(9)', 'the sentence on specific legal rights', 'legal-rights'),
  gb('(4)(a)', 'contents and how to claim, in plain language', 'how-to-claim'),
  gb('(4)(b)', 'statutory rights are not affected', 'legal-rights'),
  gb('(5)(a)', 'name and address', 'guarantor'),
  gb('(5)(b) duration', 'duration', 'cover'),
  gb('(5)(b) territory', 'territorial scope', 'territory'),
];

function eu(item: string, asks: string, section: SectionKey): Requirement {
  return { source: 'Directive (EU) 2019/771 Art. 17(2)', item, asks, section };
}

function us(item: string, asks: string, section: SectionKey): Requirement {
  return { source: '16 CFR 701.3(a)', item, asks, section };
}

function gb(item: string, asks: string, section: SectionKey): Requirement {
  return { source: 'Consumer Rights Act 2015 s.30', item, asks, section };
}
