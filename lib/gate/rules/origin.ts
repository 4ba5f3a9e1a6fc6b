/** What a browser, or somebody who plays one, says of where a request comes from. */
export type SaidOrigin = {
  /** the Origin header as it came; null without one */
  origin: string | null;
  /** the Sec-Fetch-Site header; browsers of 2023 and later send it, and no page can change it (Fetch Metadata) */
  site: string | null;
  /** the Host header as it came */
  host: string | null;
};

/**
 * True for a request that may change something: it comes from a page of ours, or from no browser at all.
 *
 * Ours is the public address `appUrl`, whatever a proxy in between makes of the Host header, and the very address that
 * was asked, for a workshop that opens the app under a second name of its machine. Under the public name the scheme has
 * to be the public one too: what came over http may be anybody's page. Origin "null" and one that is no address are refused. Without Origin and without Sec-Fetch-Site there is no browser and so nobody whose cookies could be
 * borrowed: scripts of the workshop's own stay possible.
 *
 * isOwnOrigin({ origin: 'https://elsewhere.example.org', site: 'cross-site', host: 'mend.example.org' }, 'https://mend.example.org') -> false
 */
export function isOwnOrigin({ origin, site, host }: SaidOrigin, appUrl: string): boolean {
  if (site !== null && site !== 'same-origin' && site !== 'none') return false;
  if (origin === null) return true;
  if (!URL.canParse(origin)) return false;
  const said = new URL(origin);
  if (said.origin === 'null') return false;
  const ours = new URL(appUrl);
  return said.host === ours.host ? said.origin === ours.origin : said.host === host;
}
