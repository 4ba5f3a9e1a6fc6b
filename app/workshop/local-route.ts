import type { Route } from 'next';
import { localPath } from '@/lib/people/rules/local-path';

/** Where to go after signing in: what the address asked for, where it is the workshop's own, else Today. */
export function localRoute(asked: unknown): Route {
  return localPath(typeof asked === 'string' ? asked : undefined, '/workshop') as Route;
}
