import { readFileSync } from 'node:fs';

export type Scheme = 'light' | 'dark';

const css = readFileSync(new URL('../../app/globals.css', import.meta.url), 'utf8');

/** The colours of one scheme as written in app/globals.css: name without `--color-`, six hex digits. */
export function colours(scheme: Scheme): Map<string, string> {
  const light = hexTokens(block('@theme static'));
  if (scheme === 'light') return light;
  return new Map([...light, ...hexTokens(block('@media screen and (prefers-color-scheme: dark)'))]);
}

/** Names that the dark scheme sets anew. */
export function darkNames(): string[] {
  return [...hexTokens(block('@media screen and (prefers-color-scheme: dark)')).keys()];
}

/**
 * Contrast ratio of two colours by WCAG 2.2, "contrast ratio" and "relative luminance":
 * https://www.w3.org/TR/WCAG22/#dfn-contrast-ratio, https://www.w3.org/TR/WCAG22/#dfn-relative-luminance
 */
export function contrast(one: string, other: string): number {
  const [darker, lighter] = [luminance(one), luminance(other)].sort((a, b) => a - b);
  if (darker === undefined || lighter === undefined) throw new Error('two colours are needed');
  return (lighter + 0.05) / (darker + 0.05);
}

function luminance(hex: string): number {
  const [r, g, b] = [0, 2, 4].map((at) => channel(Number.parseInt(hex.slice(at, at + 2), 16) / 255));
  if (r === undefined || g === undefined || b === undefined) throw new Error(`no colour: ${hex}`);
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

function channel(value: number): number {
  return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
}

function block(opening: string): string {
  const start = css.indexOf(`${opening} {`);
  if (start < 0) throw new Error(`globals.css has no block "${opening}"`);
  let depth = 0;
  for (let at = css.indexOf('{', start); at < css.length; at += 1) {
    if (css[at] === '{') depth += 1;
    if (css[at] === '}') depth -= 1;
    if (depth === 0) return css.slice(start, at);
  }
  throw new Error(`the block "${opening}" does not end`);
}

function hexTokens(text: string): Map<string, string> {
  const found = text.matchAll(/--color-([a-z-]+):\s*#([0-9a-f]{6});/g);
  return new Map([...found].map(([, name = '', hex = '']) => [name, hex]));
}
