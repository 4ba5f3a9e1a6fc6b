import type { Face } from '@/lib/documents/kit/fonts';

// One ink, one accent, and the tints of the paper; all text colours keep 4.5:1 on white and on the stub's tint.
export const ink = {
  text: '#1a2333',
  quiet: '#525c6b',
  accent: '#97381f',
  rule: '#b8b0a3',
  perforation: '#7d766b',
  stub: '#f5efe4',
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
