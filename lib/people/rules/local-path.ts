const BASE = 'http://local.invalid';

/**
 * The address to go to after signing in: a path of the workshop's own pages, or the fallback.
 *
 * Takes whatever stood in the address bar. Refuses other hosts in every spelling a browser would follow ("//host",
 * "/\host", "https:host", control characters) and the sign-in pages themselves, which would send people round in circles.
 *
 *     localPath('/workshop/jobs?stage=ready', '/workshop')  →  '/workshop/jobs?stage=ready'
 *     localPath('//example.net/workshop', '/workshop')      →  '/workshop'
 */
export function localPath(text: string | undefined, fallback: string): string {
  if (!text || text.length > 500 || !/^\/workshop(?![\w-])[!-[\]-~]*$/.test(text)) return fallback;
  if (!URL.canParse(text, BASE)) return fallback;
  const url = new URL(text, BASE);
  const isWorkshop = url.pathname === '/workshop' || url.pathname.startsWith('/workshop/');
  const isWayIn = /^\/workshop\/(sign-in|second-step)(\/|$)/.test(url.pathname);
  if (url.origin !== BASE || !isWorkshop || isWayIn) return fallback;
  return url.pathname + url.search;
}
