// Currencies of ISO 4217 by their number of decimals. Not from Intl: CLDR shows HUF, MGA and IQD
// with no decimals where ISO 4217 says 2, 2 and 3. Codes without a minor unit (gold, SDR, test codes) are left out.
const CODES_BY_EXPONENT: readonly (readonly [number, string])[] = [
  [0, 'BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX UYI VND VUV XAF XOF XPF'],
  [
    2,
    'AED AFN ALL AMD AOA ARS AUD AWG AZN BAM BBD BDT BMD BND BOB BOV BRL BSD BTN BWP BYN BZD CAD CDF CHE CHF CHW CNY COP COU CRC CUP CVE CZK DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL GHS GIP GMD GTQ GYD HKD HNL HTG HUF IDR ILS INR IRR JMD KES KGS KHR KPW KYD KZT LAK LBP LKR LRD LSL MAD MDL MGA MKD MMK MNT MOP MRU MUR MVR MWK MXN MXV MYR MZN NAD NGN NIO NOK NPR NZD PAB PEN PGK PHP PKR PLN QAR RON RSD RUB SAR SBD SCR SDG SEK SGD SHP SLE SOS SRD SSP STN SVC SYP SZL THB TJS TMT TOP TRY TTD TWD TZS UAH USD USN UYU UZS VED VES WST XCD XCG YER ZAR ZMW ZWG',
  ],
  [3, 'BHD IQD JOD KWD LYD OMR TND'],
  [4, 'CLF UYW'],
];

const EXPONENTS: ReadonlyMap<string, number> = new Map(
  CODES_BY_EXPONENT.flatMap(([exponent, codes]) => codes.split(' ').map((code) => [code, exponent] as const)),
);

/** The number of decimals of a currency by ISO 4217: JPY 0, EUR 2, KWD 3. Throws a RangeError on an unknown code. */
export function exponentOf(currency: string): number {
  const exponent = EXPONENTS.get(currency);
  if (exponent === undefined) throw new RangeError(`Not a currency of ISO 4217: ${JSON.stringify(currency)}`);
  return exponent;
}

/** True for a currency code of ISO 4217 with a minor unit, in capitals. */
export function isCurrency(code: string): boolean {
  return EXPONENTS.has(code);
}

/** Every currency code known here, in alphabetical order. */
export function currencyCodes(): string[] {
  return [...EXPONENTS.keys()].sort();
}

const symbols = new Map<string, string>();

/** The shortest sign of a currency, for reading amounts: GBP '£', EUR '€', PLN 'zł'; the code itself where there is none. */
export function symbolOf(currency: string): string {
  const known = symbols.get(currency);
  if (known !== undefined) return known;
  exponentOf(currency);
  const shown = new Intl.NumberFormat('en', {
    style: 'currency',
    currency,
    currencyDisplay: 'narrowSymbol',
  });
  const symbol = shown.formatToParts(0).find((part) => part.type === 'currency')?.value ?? currency;
  symbols.set(currency, symbol);
  return symbol;
}
