import { subscribe } from 'node:diagnostics_channel';
import type { IncomingMessage, Server, ServerResponse } from 'node:http';
import { config } from '@/lib/config';
import { log } from '@/lib/log';
import { enterRequest } from '@/lib/log/request';
import { requestSeconds } from '@/lib/metrics/counters';
import { tellFailure } from './failed-page';
import { chooseRequestId } from './request-id';
import { type RoutePattern, routeOf } from './route-patterns';
import { serving } from './serving';

const isEncrypted = config.appUrl.startsWith('https:');
const asked = new Set(['/health', '/ready', '/metrics', '/_next']);
const methods = new Set(['GET', 'HEAD', 'POST', 'OPTIONS']);

/**
 * Gives every request of this process an id, counts and times it, and remembers those that are open and the server they
 * came through, so that a stop can wait for them. Node tells of each request before anybody handles it.
 */
export function watchRequests(patterns: readonly RoutePattern[]): void {
  subscribe('http.server.request.start', (message) => {
    if (isStart(message)) watch(message, patterns);
  });
}

type Start = { request: IncomingMessage; response: ServerResponse; server: Server };

function isStart(message: unknown): message is Start {
  return typeof message === 'object' && message !== null && 'request' in message && 'server' in message;
}

function watch({ request, response, server }: Start, patterns: readonly RoutePattern[]): void {
  const began = performance.now();
  // No request can be made of TRACE (Fetch standard), at which Next errs before the gate is asked; it refuses PROPFIND.
  if (request.method === 'TRACE') request.method = 'PROPFIND';
  const requestId = chooseRequestId(request.headers['x-request-id'], config.isBehindProxy);
  const route = routeOf(request.url ?? '', patterns);
  request.headers['x-request-id'] = requestId;
  response.setHeader('x-request-id', requestId);
  // Here and not in proxy.ts, which the files that the build has made do not pass.
  if (isEncrypted) response.setHeader('strict-transport-security', 'max-age=31536000');
  tellFailure(response, requestId);
  enterRequest(requestId);
  serving.servers.add(server);
  serving.open += 1;
  // Whoever keeps a connection through a stop would send its next request into it.
  if (serving.isStopping) response.setHeader('connection', 'close');

  response.once('close', () => {
    serving.open -= 1;
    const seconds = (performance.now() - began) / 1000;
    const method = methods.has(request.method ?? '') ? (request.method ?? '') : 'OTHER';
    // 499 is what several proxies write for a caller who left before the answer; common practice, no standard.
    const status = response.writableFinished ? response.statusCode : 499;
    requestSeconds().observe({ route, method, status: String(status) }, seconds);
    if (asked.has(route) && status < 500) return;
    log.info('request', { requestId, method, route, status, ms: Math.round(seconds * 1000) });
  });
}
