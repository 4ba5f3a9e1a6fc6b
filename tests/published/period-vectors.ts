/**
 * Periods counted from a start that is not counted itself, with the last day of each. "Computed" rows were run by
 * @js-temporal/polyfill, temporal-polyfill and luxon, which agree. Regulation (EEC, Euratom) 1182/71: Art. 3(1), (2)(c) and (4)
 * were read in bilingual copies, (2)(b) is from memory; BGB 187 to 193 were read.
 */
export const PERIODS = [
  ['2019-01-31', 'P1M', '2019-02-28', 'TC39 proposal-temporal, docs/plaindate.md, overflow constrain'],
  ['2006-08-24', 'P20Y4M', '2026-12-24', 'TC39 proposal-temporal, docs/plaindate.md'],
  ['2024-01-31', 'P1M', '2024-02-29', 'BGB 188(3), computed'],
  ['2024-02-29', 'P1Y', '2025-02-28', 'BGB 188(3), computed'],
  ['2024-02-29', 'P12M', '2025-02-28', 'BGB 188(3), computed'],
  ['2024-02-29', 'P4Y', '2028-02-29', 'Reg. 1182/71 Art. 3(2)(c), computed'],
  ['2024-02-29', 'P24M', '2026-02-28', 'BGB 188(3), computed'],
  [
    '1978-09-30',
    'P4M',
    '1979-01-30',
    'the facts of Dodds v Walker [1981] 1 WLR 1027 (HL): notice on 31 January was a day late',
  ],
  ['2025-03-31', 'P6M', '2025-09-30', 'BGB 188(3), computed'],
  ['2025-08-31', 'P6M', '2026-02-28', 'BGB 188(3), computed'],
  ['2025-11-30', 'P3M', '2026-02-28', 'BGB 188(3), computed'],
  ['2023-11-30', 'P3M', '2024-02-29', 'BGB 188(3), computed'],
  ['2025-12-31', 'P2M', '2026-02-28', 'BGB 188(3), computed'],
  ['2025-10-31', 'P1M', '2025-11-30', 'BGB 188(3), computed'],
  ['2023-02-28', 'P12M', '2024-02-28', 'corresponding date, not the last day of the month; computed'],
  ['2025-12-01', 'P90D', '2026-03-01', 'Reg. 1182/71 Art. 3(1), computed'],
  ['2026-05-31', 'P90D', '2026-08-29', 'Reg. 1182/71 Art. 3(1), computed'],
  ['2026-05-31', 'P3M', '2026-08-31', 'ninety days are not three months; computed'],
  ['2025-01-31', 'P1M1D', '2025-03-01', 'months first, clamped, then days; computed'],
  [
    '2026-01-15',
    'P12M',
    '2027-01-15',
    'BGB 187(1), 188(2) first alternative: handed over 15 January at 14:30',
  ],
  ['2026-08-31', 'P6M', '2027-02-28', 'BGB 188(3): no 31 February; a Sunday, and cover is not rolled'],
  ['2026-01-30', 'P30D', '2026-03-01', 'Reg. 1182/71 Art. 3(2)(b), from memory; computed'],
  ['2026-12-01', 'P30D', '2026-12-31', 'a quote held 30 days, Dir. (EU) 2024/1799; computed'],
  ['2026-12-01', 'P14D', '2026-12-15', 'withdrawal, Dir. 2011/83/EU Art. 9; computed'],
] as const;

/**
 * Three weeks by Court of Justice C-171/03 Toeters, 11 November 2004: a period in weeks ends on the weekday of the event; the
 * authority had counted a day more. Facts found, dates computed.
 */
export const THREE_WEEKS = [
  ['1998-03-12', '1998-04-02'],
  ['1998-03-13', '1998-04-03'],
  ['1998-03-16', '1998-04-06'],
  ['1998-01-27', '1998-02-17'],
  ['1998-01-28', '1998-02-18'],
] as const;
