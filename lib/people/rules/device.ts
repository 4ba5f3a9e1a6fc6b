// Order matters: most browsers also carry the names of those they descend from.
const BROWSERS: readonly (readonly [RegExp, string])[] = [
  [/\bEdg(e|A|iOS)?\//, 'Edge'],
  [/\bOPR\//, 'Opera'],
  [/\bSamsungBrowser\//, 'Samsung Internet'],
  [/\b(Firefox|FxiOS)\//, 'Firefox'],
  [/(Chrome|CriOS|Chromium)\//, 'Chrome'],
  [/\bSafari\//, 'Safari'],
];

const SYSTEMS: readonly (readonly [RegExp, string])[] = [
  [/\bAndroid\b/, 'Android'],
  [/\b(iPhone|iPod)\b/, 'iPhone'],
  [/\biPad\b/, 'iPad'],
  [/\bWindows\b/, 'Windows'],
  [/\bMac OS X\b/, 'Mac'],
  [/\bCrOS\b/, 'ChromeOS'],
  [/\bLinux\b/, 'Linux'],
];

/**
 * A browser's own description in two words, for telling one's devices apart: 'Firefox on Android'.
 * What it does not know it calls 'A browser'; a missing description gives 'An unknown device'.
 */
export function describeDevice(userAgent: string | null): string {
  if (!userAgent) return 'An unknown device';
  const browser = firstMatch(BROWSERS, userAgent) ?? 'A browser';
  const system = firstMatch(SYSTEMS, userAgent);
  return system ? `${browser} on ${system}` : browser;
}

function firstMatch(table: readonly (readonly [RegExp, string])[], text: string): string | undefined {
  return table.find(([pattern]) => pattern.test(text))?.[1];
}
