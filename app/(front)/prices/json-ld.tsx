import { headers } from 'next/headers';

/** Facts of the page for search engines, in the words of schema.org. */
export async function JsonLd({ data }: { data: Record<string, unknown> }) {
  const nonce = (await headers()).get('x-nonce') ?? undefined;
  // "<" written as an escape, so that no text of the catalogue can end the element.
  const json = JSON.stringify({ '@context': 'https://schema.org', ...data }).replaceAll('<', '\\u003c');
  return (
    <script
      type="application/ld+json"
      nonce={nonce}
      // A browser hides the nonce from script, so React finds it changed.
      suppressHydrationWarning
      // biome-ignore lint/security/noDangerouslySetInnerHtml: React would write quotes as entities, which JSON does not know
      dangerouslySetInnerHTML={{ __html: json }}
    />
  );
}
