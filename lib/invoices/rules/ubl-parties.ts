import { isCountryCode } from '@/lib/numbers/countries';
import type { Paper, Party } from './paper';
import { element, type Xml } from './xml';

/** BG-4: the seller with its identifiers. */
export function ublSeller({ seller, breakdown }: Paper): Xml {
  const number = seller.taxNumber.replace(/\s+/g, '').toUpperCase();
  // BR-O-02: an invoice outside the scope of the tax carries no VAT identifier; BR-CO-26 still wants one that names the seller.
  const isVat = isVatNumber(number) && breakdown.every((part) => part.category !== 'O');
  return element('cac:Party', [
    isVat ? null : element('cac:PartyIdentification', [element('cbc:ID', seller.taxNumber)]),
    element('cac:PartyName', [element('cbc:Name', seller.name)]),
    address(seller),
    taxScheme(isVat ? number : seller.taxNumber, isVat, breakdown),
    element('cac:PartyLegalEntity', [element('cbc:RegistrationName', seller.name)]),
    contact(seller.name, seller.phone, seller.email),
  ]);
}

/** BG-7: the buyer; a private customer has no identifiers. */
export function ublBuyer(buyer: Party): Xml {
  return element('cac:Party', [
    address(buyer),
    element('cac:PartyLegalEntity', [element('cbc:RegistrationName', buyer.name)]),
    contact(buyer.name, '', buyer.email),
  ]);
}

/** BR-CO-09: a VAT identifier begins with the country's two letters, EL for Greece. */
function isVatNumber(number: string): boolean {
  const prefix = number.slice(0, 2);
  return /^[A-Z]{2}[A-Z0-9+*]{2,}$/.test(number) && (prefix === 'EL' || isCountryCode(prefix));
}

function taxScheme(number: string, isVat: boolean, breakdown: Paper['breakdown']): Xml | null {
  if (breakdown.some((part) => part.category === 'O')) return null;
  return element('cac:PartyTaxScheme', [
    element('cbc:CompanyID', number),
    // BT-31 under VAT; any other scheme is the local registration BT-32.
    element('cac:TaxScheme', [element('cbc:ID', isVat ? 'VAT' : 'TAX')]),
  ]);
}

function address(party: Party): Xml {
  const [street = '', more = '', ...rest] = party.addressLines.filter((line) => line !== '');
  const third = rest.join(', ');
  return element('cac:PostalAddress', [
    street === '' ? null : element('cbc:StreetName', street),
    more === '' ? null : element('cbc:AdditionalStreetName', more),
    party.town === '' ? null : element('cbc:CityName', party.town),
    party.postcode === '' ? null : element('cbc:PostalZone', party.postcode),
    third === '' ? null : element('cac:AddressLine', [element('cbc:Line', third)]),
    element('cac:Country', [element('cbc:IdentificationCode', party.country)]),
  ]);
}

function contact(name: string, phone: string, email: string): Xml | null {
  if (phone === '' && email === '') return null;
  return element('cac:Contact', [
    element('cbc:Name', name),
    phone === '' ? null : element('cbc:Telephone', phone),
    email === '' ? null : element('cbc:ElectronicMail', email),
  ]);
}
