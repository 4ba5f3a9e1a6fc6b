/** Ids of rows are UUIDs (prisma/schema); a job's number is none, since a customer writes it on a parcel. */
const rowId = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/;
/** The folders of a route, places in brackets: '/job/[token]', never '/job/…' with the token itself. */
const routePattern = /^\/$|^(\/(\[[a-zA-Z.]+\]|[a-z_][a-z_.-]{0,23}))+$|^(unmatched|unknown)$/;
const code = /^[A-Za-z0-9][A-Za-z0-9_.-]{0,39}$/;
const word = /^[a-z][a-z-]{0,23}$/;

const shapes = {
  requestId: /^[A-Za-z0-9][A-Za-z0-9_-]{7,63}$/,
  mailId: rowId,
  jobId: rowId,
  quoteId: rowId,
  priceId: rowId,
  backupId: rowId,
  method: /^[A-Z]{3,7}$/,
  route: routePattern,
  /** Of an error as its page shows it: Next makes it of the error's text. */
  digest: /^[0-9]{1,20}(@[A-Z0-9]{1,8})?$/,
  code,
  kind: word,
  state: word,
  signal: /^SIG[A-Z]{2,6}$/,
} as const;

const numbers = ['status', 'ms', 'count', 'attempt', 'port'] as const;

export type LogFields = Partial<
  Record<keyof typeof shapes, string> & Record<(typeof numbers)[number], number>
>;

/**
 * Keeps the fields that are known and look like what they say they are, and counts the others in `leftOut` without
 * telling them. Whoever calls with a wrong value by mistake finds out, and nobody else does.
 *
 * readFields({ mailId: 'mira@example.org', status: 200 }) -> { status: 200, leftOut: 1 }
 */
export function readFields(given: LogFields): Record<string, string | number> {
  const kept: Record<string, string | number> = {};
  let leftOut = 0;
  for (const [name, value] of Object.entries(given)) {
    if (value === undefined) continue;
    if (mayBeTold(name, value)) kept[name] = value;
    else leftOut += 1;
  }
  return leftOut === 0 ? kept : { ...kept, leftOut };
}

function mayBeTold(name: string, value: unknown): boolean {
  if (typeof value === 'number') return numbers.some((known) => known === name) && Number.isFinite(value);
  const shape: unknown = Object.hasOwn(shapes, name) ? Reflect.get(shapes, name) : undefined;
  return typeof value === 'string' && shape instanceof RegExp && shape.test(value);
}
