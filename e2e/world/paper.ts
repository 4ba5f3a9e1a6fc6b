import type { Locator, Page } from '@playwright/test';
import jsQR from 'jsqr';
import { isInstalled, paintPage } from '@/tests/documents/tools';

export type Paper = { status: number; contentType: string; bytes: Uint8Array };

/** Fetches the file behind a link as the person of this page: a browser would only show it. */
export async function fetchPaper(page: Page, link: Locator): Promise<Paper> {
  const href = (await link.getAttribute('href')) ?? '';
  const answer = await page.request.get(new URL(href, page.url()).href);
  return {
    status: answer.status(),
    contentType: answer.headers()['content-type'] ?? '',
    bytes: new Uint8Array(await answer.body()),
  };
}

/** Machines without poppler read what a code says from the file's own data alone. */
export const canPaintPages = isInstalled('pdftoppm');

/** What the first QR code on the first page says, read off the painted page like a phone does; null without one. */
export function readCode(bytes: Uint8Array): string | null {
  const { width, height, grey } = paintPage(bytes, 1, 200);
  const pixels = new Uint8ClampedArray(width * height * 4);
  for (const [at, shade] of grey.entries())
    pixels.fill(shade, at * 4, at * 4 + 3).fill(255, at * 4 + 3, at * 4 + 4);
  return jsQR(pixels, width, height)?.data ?? null;
}
