import { log } from '@/lib/log';

type Asked = { method: string; headers: NodeJS.Dict<string | string[]> };
type Place = { routePath: string; routeType: string };

/** Logs a fault that ended a request: the digest its page shows, the request's id, and the route without what filled it. */
export function tellFault(error: unknown, request: Asked, place: Place): void {
  const digest = error instanceof Error && 'digest' in error ? String(error.digest) : undefined;
  const requestId = request.headers['x-request-id'];
  log.error(
    'request-failed',
    {
      ...(typeof requestId === 'string' && { requestId }),
      ...(digest && { digest }),
      method: request.method,
      route: patternOf(place.routePath),
      kind: place.routeType,
    },
    error,
  );
}

/** Next names the file: '/(front)/job/[token]/page' -> '/job/[token]'. */
function patternOf(file: string): string {
  const folders = file.split('/').filter((part) => part !== '' && !/^\(.*\)$/.test(part));
  if (folders.at(-1) === 'page' || folders.at(-1) === 'route') folders.pop();
  return `/${folders.join('/')}`;
}
