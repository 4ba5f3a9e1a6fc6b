import { all, type Node, textAt } from './read-xml';

// The published rules of EN 16931 as eInvoicing-EN16931 states them in ubl/schematron/abstract/EN16931-model.sch, worked
// out again here on the XML alone, in hundredths and without the tolerance of that file's BR-CO-17.

/** A decimal as hundredths; throws on more than two decimals, which BR-DEC-* forbids. */
function hundredths(text: string | null): number {
  const read = /^(-?)(\d+)(?:\.(\d{1,2}))?$/.exec(text ?? '0');
  if (!read) throw new Error(`BR-DEC: ${text}`);
  const whole = Number(read[2]) * 100 + Number((read[3] ?? '').padEnd(2, '0'));
  return read[1] === '-' ? -whole : whole;
}

const sum = (amounts: readonly number[]) => amounts.reduce((found, each) => found + each, 0);

/** base x percent / 100 rounded half up to a unit of the currency, exactly: the unit is 1 hundredth, or 100 of them. */
function taxOn(base: number, percent: string, unit: number): number {
  const read = /^(\d+)(?:\.(\d+))?$/.exec(percent);
  if (!read) throw new Error(`not a rate: ${percent}`);
  const decimals = read[2] ?? '';
  const top = BigInt(Math.abs(base)) * BigInt(`${read[1]}${decimals}`);
  const bottom = 100n * 10n ** BigInt(decimals.length) * BigInt(unit);
  const rounded = Number((2n * top + bottom) / (2n * bottom)) * unit;
  return base < 0 ? -rounded : rounded;
}

/** Names of the rules that a document breaks. */
export function brokenRules(root: Node, decimals: 0 | 2): string[] {
  const isCredit = root.name === 'CreditNote';
  const lineName = isCredit ? 'CreditNoteLine' : 'InvoiceLine';
  const quantity = isCredit ? 'CreditedQuantity' : 'InvoicedQuantity';
  const amount = (path: string) => hundredths(textAt(root, path));
  const total = (name: string) => amount(`LegalMonetaryTotal/${name}`);
  const lines = all(root, lineName).map((line) => ({
    net: hundredths(textAt(line, 'LineExtensionAmount')),
    quantity: Number(textAt(line, quantity)),
    price: hundredths(textAt(line, 'Price/PriceAmount')),
    name: textAt(line, 'Item/Name') ?? '',
    category: textAt(line, 'Item/ClassifiedTaxCategory/ID') ?? '',
    percent: textAt(line, 'Item/ClassifiedTaxCategory/Percent'),
  }));
  const parts = all(root, 'TaxTotal/TaxSubtotal').map((part) => ({
    base: hundredths(textAt(part, 'TaxableAmount')),
    tax: hundredths(textAt(part, 'TaxAmount')),
    category: textAt(part, 'TaxCategory/ID') ?? '',
    percent: textAt(part, 'TaxCategory/Percent'),
    reason: textAt(part, 'TaxCategory/TaxExemptionReason'),
  }));
  const unit = decimals === 0 ? 100 : 1;
  const taxNumber = textAt(root, 'AccountingSupplierParty/Party/PartyTaxScheme/CompanyID');
  const identifier =
    textAt(root, 'AccountingSupplierParty/Party/PartyIdentification/ID') ??
    textAt(root, 'AccountingSupplierParty/Party/PartyLegalEntity/CompanyID') ??
    taxNumber;
  const categories = new Set(parts.map((part) => part.category));
  const key = (each: { category: string; percent: string | null }) => `${each.category} ${each.percent}`;
  const rules: [string, boolean][] = [
    ['BR-01 specification', textAt(root, 'CustomizationID') === 'urn:cen.eu:en16931:2017'],
    ['BR-02 number', (textAt(root, 'ID') ?? '') !== ''],
    ['BR-03 issue date', /^\d{4}-\d{2}-\d{2}$/.test(textAt(root, 'IssueDate') ?? '')],
    [
      'BR-04 type',
      textAt(root, isCredit ? 'CreditNoteTypeCode' : 'InvoiceTypeCode') === (isCredit ? '381' : '380'),
    ],
    [
      'BR-06 seller',
      textAt(root, 'AccountingSupplierParty/Party/PartyLegalEntity/RegistrationName') !== null,
    ],
    ['BR-07 buyer', textAt(root, 'AccountingCustomerParty/Party/PartyLegalEntity/RegistrationName') !== null],
    [
      'BR-09 seller country',
      textAt(root, 'AccountingSupplierParty/Party/PostalAddress/Country/IdentificationCode') !== null,
    ],
    [
      'BR-11 buyer country',
      textAt(root, 'AccountingCustomerParty/Party/PostalAddress/Country/IdentificationCode') !== null,
    ],
    ['BR-16 a line', lines.length > 0],
    ['BR-48 a rate', parts.every((part) => (part.category === 'O') === (part.percent === null))],
    ['BR-25 item name', lines.every((line) => line.name !== '')],
    ['BR-27 price not negative', lines.every((line) => line.price >= 0)],
    ['BR-CO-10', total('LineExtensionAmount') === sum(lines.map((line) => line.net))],
    ['BR-CO-13', total('TaxExclusiveAmount') === total('LineExtensionAmount')],
    ['BR-CO-14', amount('TaxTotal/TaxAmount') === sum(parts.map((part) => part.tax))],
    ['BR-CO-15', total('TaxInclusiveAmount') === total('TaxExclusiveAmount') + amount('TaxTotal/TaxAmount')],
    [
      'BR-CO-16',
      total('PayableAmount') ===
        total('TaxInclusiveAmount') - total('PrepaidAmount') + total('PayableRoundingAmount'),
    ],
    [
      'BR-CO-17',
      parts.every((part) => part.tax === (part.percent ? taxOn(part.base, part.percent, unit) : 0)),
    ],
    ['BR-CO-18', parts.length > 0],
    [
      'BR-CO-25',
      total('PayableAmount') <= 0 ||
        textAt(root, 'DueDate') !== null ||
        textAt(root, 'PaymentTerms/Note') !== null,
    ],
    ['BR-CO-26', identifier !== null],
    ['Peppol R120', lines.every((line) => line.net === line.quantity * line.price)],
    [
      'BR-S/Z/E/O-08',
      parts.every(
        (part) => part.base === sum(lines.filter((line) => key(line) === key(part)).map((line) => line.net)),
      ) && lines.every((line) => parts.some((part) => key(line) === key(part))),
    ],
    ['BR-Z/E/O-09', parts.every((part) => part.category === 'S' || part.tax === 0)],
    ['BR-S-05', lines.every((line) => line.category !== 'S' || Number(line.percent) > 0)],
    ['BR-Z/E-05', lines.every((line) => !['Z', 'E'].includes(line.category) || Number(line.percent) === 0)],
    ['BR-O-05', lines.every((line) => line.category !== 'O' || line.percent === null)],
    ['BR-S/Z/E-02', categories.has('O') || taxNumber !== null],
    ['BR-O-02', !categories.has('O') || taxNumber === null],
    ['BR-O-11', !categories.has('O') || categories.size === 1],
    [
      'BR-E/O-10',
      parts.every(
        (part) => ['E', 'O'].includes(part.category) === (part.reason !== null && part.reason !== ''),
      ),
    ],
    [
      'BR-05 a currency, the same throughout',
      currenciesOf(root).every((currency) => currency === textAt(root, 'DocumentCurrencyCode')),
    ],
  ];
  return rules.filter(([, holds]) => !holds).map(([name]) => name);
}

function currenciesOf(node: Node): string[] {
  const own = node.attributes['currencyID'];
  return [...(own === undefined ? [] : [own]), ...node.children.flatMap(currenciesOf)];
}
