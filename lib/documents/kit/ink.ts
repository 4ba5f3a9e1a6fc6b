import type { Face } from '@/lib/documents/kit/fonts';

// One ink, one accent, and the tints of the docket: they mirror app/globals.css, the one place where a colour is decided, and
// tests/documents/ink.test.ts compares the two. The paper itself is white and codes are black, for the scanner's sake.
export const ink = {
  text: '#172033',
  quiet: '#4c5363',
  accent: '#8a3a20',
  rule: '#cfc4ae',
  perforation: '#7c7464',
  stub: '#ebe2d0',
  white: '#ffffff',
  code: '#000000',
} as const;

export type Colour = (typeof ink)[keyof typeof ink];

export type Style = { face: Face; size: number; leading: number; colour: Colour };

// Five sizes, as on screen.
export const styles = {
  title: { face: 'strong', size: 20, leading: 24, colour: ink.text },
  lead: { face: 'strong', size: 12, leading: 15.5, colour: ink.text },
  number: { face: 'mono-strong', size: 17, leading: 22, colour: ink.text },
  body: { face: 'text', size: 9.6, leading: 13, colour: ink.text },
  small: { face: 'text', size: 8, leading: 10.8, colour: ink.quiet },
} as const satisfies Record<string, Style>;

/** The same style in another face or colour. */
export function styled(base: Style, change: Partial<Style>): Style {
  return { ...base, ...change };
}

// Points. The stub column is shared by the docket and by every section below it.
export const grid = { margin: 38, stub: 142, gutter: 18, radius: 2 } as const;

/** Millimetres to PDF points. */
export function mm(value: number): number {
  return (value * 72) / 25.4;
}
