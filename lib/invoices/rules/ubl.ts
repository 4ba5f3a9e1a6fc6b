/**
 * An invoice as structured data: UBL 2.1 by EN 16931-1 and its syntax binding CEN/TS 16931-3-2. Glossary:
 * - BT, BG: a business term or group of the norm; BR: one of its rules, as published in eInvoicing-EN16931.
 */
import { decimalText } from '@/lib/money/amount';
import { exponentOf } from '@/lib/money/currency';
import type { TaxBreakdown } from '@/lib/money/tax';
import { isCountryCode } from '@/lib/numbers/countries';
import { creditorReference, foldIban } from './bank';
import type { Paper, PaperLine } from './paper';
import { ublBuyer, ublSeller } from './ubl-parties';
import { element, type Xml, xmlText } from './xml';

export type UblProblem =
  | 'decimals'
  | 'no-rate'
  | 'mixed-outside'
  | 'no-tax-number'
  | 'no-exempt-reason'
  | 'no-country';

/** Why an invoice cannot be had in the structured form; empty when it can. */
export function ublProblems(paper: Paper): UblProblem[] {
  const categories = new Set(paper.breakdown.map((part) => part.category));
  const { seller, buyer } = paper;
  return [
    // BR-DEC-*: amounts have two decimals at most.
    ...(exponentOf(paper.currency) > 2 ? (['decimals'] as const) : []),
    // BR-S-05: the standard category has a rate above 0.
    ...(paper.lines.some((line) => line.category === 'S' && line.rateBps === 0)
      ? (['no-rate'] as const)
      : []),
    // BR-O-11 to BR-O-14: what is outside the scope of the tax stands on an invoice of its own.
    ...(categories.has('O') && categories.size > 1 ? (['mixed-outside'] as const) : []),
    // BR-S-02, BR-Z-02, BR-E-02, and BR-CO-26 for the rest.
    ...(seller.taxNumber === '' ? (['no-tax-number'] as const) : []),
    // BR-E-10.
    ...(categories.has('E') && seller.taxExemptReason.trim() === '' ? (['no-exempt-reason'] as const) : []),
    // BR-09, BR-11.
    ...([seller, buyer].every((party) => isCountryCode(party.country)) ? [] : (['no-country'] as const)),
  ];
}

export const UBL_PROBLEM_SENTENCES: Record<UblProblem, string> = {
  decimals: 'EN 16931 allows amounts two decimals, and this currency has more.',
  'no-rate': 'A line at the standard rate has no rate. Choose zero rate or exempt in the catalogue instead.',
  'mixed-outside':
    'EN 16931 wants what is outside the scope of the tax on an invoice of its own, and this one mixes it with other lines.',
  'no-tax-number': 'It must carry the workshop’s tax number, and none was set when it was issued.',
  'no-exempt-reason': 'It must say why a line is exempt, and no reason was set when it was issued.',
  'no-country': 'Both parties need a country that ISO 3166 knows.',
};

const NAMES = {
  invoice: { root: 'Invoice', code: 'InvoiceTypeCode', line: 'InvoiceLine', quantity: 'InvoicedQuantity' },
  'credit-note': {
    root: 'CreditNote',
    code: 'CreditNoteTypeCode',
    line: 'CreditNoteLine',
    quantity: 'CreditedQuantity',
  },
} as const;
const SPACE = 'urn:oasis:names:specification:ubl:schema:xsd';

/**
 * The XML of an invoice or credit note. A line whose amount is below zero, such as a discount, has a quantity of -1 at a
 * positive price, since a price is never negative (BR-27). Refuses what ublProblems() names.
 */
export function ublText(paper: Paper): string {
  const problems = ublProblems(paper);
  if (problems.length > 0)
    throw new RangeError(`not to be had in the structured form: ${problems.join(', ')}`);
  const names = NAMES[paper.kind];
  const isCredit = paper.kind === 'credit-note';
  const amount = (name: string, minor: number) =>
    element(name, decimalText(minor, paper.currency), { currencyID: paper.currency });
  const root = element(
    names.root,
    [
      element('cbc:CustomizationID', 'urn:cen.eu:en16931:2017'),
      element('cbc:ID', paper.number),
      element('cbc:IssueDate', paper.issuedOn),
      isCredit ? null : element('cbc:DueDate', paper.dueOn),
      // UNTDID 1001: 380 commercial invoice, 381 credit note.
      element(`cbc:${names.code}`, isCredit ? '381' : '380'),
      paper.reason === '' ? null : element('cbc:Note', paper.reason),
      element('cbc:DocumentCurrencyCode', paper.currency),
      paper.corrects ? correctedInvoice(paper.corrects) : null,
      element('cac:AccountingSupplierParty', [ublSeller(paper)]),
      element('cac:AccountingCustomerParty', [ublBuyer(paper.buyer)]),
      paper.suppliedOn === null
        ? null
        : element('cac:Delivery', [element('cbc:ActualDeliveryDate', paper.suppliedOn)]),
      paymentMeans(paper),
      isCredit
        ? element('cac:PaymentTerms', [element('cbc:Note', 'Set off against the invoice, or given back.')])
        : null,
      taxTotal(paper, amount),
      monetaryTotal(paper, amount),
      ...paper.lines.map((line, place) =>
        element(`cac:${names.line}`, invoiceLine(line, { place, quantity: names.quantity, amount })),
      ),
    ],
    {
      xmlns: `${SPACE}:${names.root}-2`,
      'xmlns:cac': `${SPACE}:CommonAggregateComponents-2`,
      'xmlns:cbc': `${SPACE}:CommonBasicComponents-2`,
    },
  );
  return xmlText(root);
}

type Amount = (name: string, minor: number) => Xml;

function correctedInvoice(corrects: NonNullable<Paper['corrects']>): Xml {
  return element('cac:BillingReference', [
    element('cac:InvoiceDocumentReference', [
      element('cbc:ID', corrects.number),
      element('cbc:IssueDate', corrects.issuedOn),
    ]),
  ]);
}

/** How the seller is paid; a credit note asks for no payment. */
function paymentMeans(paper: Paper): Xml | null {
  const { iban, bic, bankHolder, name } = paper.seller;
  if (iban === '' || paper.kind === 'credit-note') return null;
  return element('cac:PaymentMeans', [
    // UNTDID 4461: 58 SEPA credit transfer, 30 credit transfer.
    element('cbc:PaymentMeansCode', paper.currency === 'EUR' ? '58' : '30'),
    element('cbc:PaymentID', paper.currency === 'EUR' ? creditorReference(paper.number) : paper.number),
    element('cac:PayeeFinancialAccount', [
      element('cbc:ID', foldIban(iban)),
      element('cbc:Name', bankHolder.trim() || name),
      bic === '' ? null : element('cac:FinancialInstitutionBranch', [element('cbc:ID', bic)]),
    ]),
  ]);
}

function taxTotal(paper: Paper, amount: Amount): Xml {
  return element('cac:TaxTotal', [
    amount('cbc:TaxAmount', paper.tax),
    ...paper.breakdown.map((part) =>
      element('cac:TaxSubtotal', [
        amount('cbc:TaxableAmount', part.base),
        amount('cbc:TaxAmount', part.tax),
        taxCategory('cac:TaxCategory', part, exemptReason(part, paper)),
      ]),
    ),
  ]);
}

/** BR-E-10 and BR-O-10 want a reason, BR-S-10 and BR-Z-10 want none. */
function exemptReason(part: TaxBreakdown, { seller }: Paper): string | null {
  if (part.category === 'E') return seller.taxExemptReason.trim();
  return part.category === 'O' ? `Outside the scope of ${seller.taxName}` : null;
}

/** A category with its rate; what is outside the scope of the tax has no rate at all (BR-O-05). */
function taxCategory(
  name: string,
  part: { category: string; rateBps: number },
  reason: string | null = null,
): Xml {
  return element(name, [
    element('cbc:ID', part.category),
    part.category === 'O' ? null : element('cbc:Percent', percentOf(part.rateBps)),
    reason === null ? null : element('cbc:TaxExemptionReason', reason),
    element('cac:TaxScheme', [element('cbc:ID', 'VAT')]),
  ]);
}

/** 2000 is '20', 550 is '5.5'. */
function percentOf(rateBps: number): string {
  const rest = String(rateBps % 100)
    .padStart(2, '0')
    .replace(/0+$/, '');
  return rest === '' ? String(rateBps / 100) : `${Math.floor(rateBps / 100)}.${rest}`;
}

function monetaryTotal(paper: Paper, amount: Amount): Xml {
  return element('cac:LegalMonetaryTotal', [
    amount('cbc:LineExtensionAmount', paper.net),
    amount('cbc:TaxExclusiveAmount', paper.net),
    amount('cbc:TaxInclusiveAmount', paper.net + paper.tax),
    paper.prepaid === 0 ? null : amount('cbc:PrepaidAmount', paper.prepaid),
    paper.rounding === 0 ? null : amount('cbc:PayableRoundingAmount', paper.rounding),
    amount('cbc:PayableAmount', paper.payable - paper.prepaid),
  ]);
}

function invoiceLine(
  line: PaperLine,
  o: { place: number; quantity: string; amount: Amount },
): readonly Xml[] {
  return [
    element('cbc:ID', String(o.place + 1)),
    // UN/ECE Recommendation 20: C62 is one, a piece.
    element(`cbc:${o.quantity}`, line.net < 0 ? '-1' : '1', { unitCode: 'C62' }),
    o.amount('cbc:LineExtensionAmount', line.net),
    element('cac:Item', [
      element('cbc:Name', line.description),
      taxCategory('cac:ClassifiedTaxCategory', line),
    ]),
    element('cac:Price', [o.amount('cbc:PriceAmount', Math.abs(line.net))]),
  ];
}
