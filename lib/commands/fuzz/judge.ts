import { HEADER_MARK, MARK } from './hostile';
import type { Answer } from './send';

/** What is wrong with an answer, whatever was asked; null when nothing is. */
export function faultOf(answer: Answer | { fault: string }): string | null {
  if ('fault' in answer) return answer.fault;
  const { status, headers, body } = answer;
  if (status >= 500) return `status ${status}`;
  if (headers[HEADER_MARK]) return 'a header of the caller’s making';
  const type = headers['content-type'] ?? '';
  if (type.startsWith('text/html') && body.includes(MARK)) return 'markup of the caller’s making';
  if (/node_modules\/|PrismaClient|at Object\.<anonymous>|postgresql:\/\//.test(body))
    return 'tells of its inside';
  // Next itself leads from two slashes to one, before any header of ours, with nothing a browser would read as a page.
  if (status < 300 && !headers['x-content-type-options']) return 'no nosniff';
  if (
    type.startsWith('text/html') &&
    !/script-src 'self' 'nonce-/.test(headers['content-security-policy'] ?? '')
  ) {
    return 'a page without its policy';
  }
  const location = headers['location'];
  if (location && !/^\/(?![/\\])/.test(location) && !location.startsWith(process.env['APP_URL'] ?? '?')) {
    return `leads away to ${location.slice(0, 80)}`;
  }
  return null;
}
