import { readFileSync } from 'node:fs';
import path from 'node:path';
import { z } from 'zod';

const row = z.object({ page: z.string(), regex: z.string() });
const manifest = z.object({ staticRoutes: z.array(row), dynamicRoutes: z.array(row) });

export type RoutePattern = { page: string; matches: RegExp };

/** The addresses the built pages answer at, plain ones first, as Next itself tries them. */
export function readRoutePatterns(folder = '.next'): RoutePattern[] {
  try {
    const file = path.join(folder, 'routes-manifest.json');
    const { staticRoutes, dynamicRoutes } = manifest.parse(JSON.parse(readFileSync(file, 'utf8')));
    return [...staticRoutes, ...dynamicRoutes].map(({ page, regex }) => ({
      page,
      matches: new RegExp(regex),
    }));
  } catch {
    // Without a build, as in a worker, there are no pages to name.
    return [];
  }
}

/**
 * The pattern an address belongs to, which tells no token and no number:
 * routeOf('/job/Q2x…/slip.pdf?x=1', patterns) -> '/job/[token]/slip.pdf'. 'unmatched' for an address that has none.
 */
export function routeOf(address: string, patterns: readonly RoutePattern[]): string {
  const pathname = address.split(/[?#]/, 1)[0] ?? '';
  if (pathname.startsWith('/_next/')) return '/_next';
  return patterns.find(({ matches }) => matches.test(pathname))?.page ?? 'unmatched';
}
