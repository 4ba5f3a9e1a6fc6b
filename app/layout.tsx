import type { Metadata, Viewport } from 'next';
import { headers } from 'next/headers';
import { connection } from 'next/server';
import type { ReactNode } from 'react';
import { LANGUAGE } from '@/lib/calendar/language';
import './globals.css';

export const metadata: Metadata = {
  title: { default: 'Mendpost', template: '%s' },
  description: 'Repairs by post, with a written warranty.',
  // A private link is a key; it must not travel to another site in the Referer header.
  referrer: 'same-origin',
  formatDetection: { telephone: false, date: false, address: false, email: false },
};

export const viewport: Viewport = {
  width: 'device-width',
  initialScale: 1,
  colorScheme: 'light dark',
};

export default async function RootLayout({ children }: { children: ReactNode }) {
  // Every page is made on request: the script nonce of the security policy differs each time.
  await connection();
  return (
    // Where the page of a fault finds which request to name.
    <html lang={LANGUAGE} data-request={(await headers()).get('x-request-id') ?? undefined}>
      <body>{children}</body>
    </html>
  );
}
