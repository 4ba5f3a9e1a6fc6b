import fc from 'fast-check';
import type { RouteRow } from '@/e2e/world/routes';
import type { FoundForm } from './forms';
import { hostileHeaders, hostileText, hostileValue } from './hostile';
import type { Places } from './places';

export type Part = { name: string; value: string; file?: string };

/** What is to be sent; its bytes are made only when it is, since some are large. */
export type Plan = {
  kind: 'open' | 'with script' | 'without script' | 'put';
  method: string;
  path: string;
  headers: Record<string, string>;
  actionId: string;
  bound: unknown[];
  parts: Part[];
  harm: 'none' | 'cut' | 'type' | 'boundary' | 'text' | 'root';
};

export type Known = {
  routes: readonly RouteRow[];
  places: Places;
  forms: readonly FoundForm[];
  actionIds: readonly string[];
};

const rawPieces = [
  '%',
  '%00',
  '%ff',
  '%C0%80',
  '%ED%A0%80',
  '%2e%2e%2f',
  '..;',
  '%0d%0a',
  '%5c',
  '%252e',
  '*',
  '[job]',
  '~',
  ';a=b',
  '%F0%9F%98%80',
];
const queryNames = [
  'q',
  'page',
  'month',
  'stage',
  'show',
  'then',
  'needs',
  'done',
  'saved',
  'repair',
  'model',
  'answer',
  'number',
  'name',
  'carrier',
  'from',
  'to',
  'first',
  'skip',
  'days',
  'family',
  'state',
  'for',
  'booked',
  '_rsc',
  '__proto__',
];
const commonNames = [
  'version',
  'formKey',
  'email',
  'name',
  'text',
  'phase',
  'serial',
  'photos',
  'kept',
  'move',
  'amount',
  'password',
  'code',
  'intent',
  'seenAt',
  'lines',
  '__proto__',
  'constructor',
  'then',
  'toJSON',
  '$ACTION_KEY',
];

/** Requests of every kind there is, made of what the app has: its addresses, its actions and the forms of its pages. */
export function hostileRequest(known: Known): fc.Arbitrary<Plan> {
  const address = fc
    .tuple(fc.constantFrom(...known.routes), query())
    .chain(([route, asked]) =>
      pathOf(route, known.places).map(
        (path) => path + (path.includes('?') ? asked.replace('?', '&') : asked),
      ),
    );
  const harm = fc.oneof(
    { weight: 12, arbitrary: fc.constant<Plan['harm']>('none') },
    { weight: 3, arbitrary: fc.constantFrom<Plan['harm']>('cut', 'type', 'boundary', 'text', 'root') },
  );
  const base = fc.record({ path: address, headers: hostileHeaders, harm });
  const open = fc
    .record({
      base,
      method: fc.oneof(
        { weight: 9, arbitrary: fc.constant('GET') },
        {
          weight: 2,
          arbitrary: fc.constantFrom(
            'HEAD',
            'POST',
            'PUT',
            'DELETE',
            'PATCH',
            'OPTIONS',
            'TRACE',
            'PROPFIND',
            'QUERY',
          ),
        },
      ),
    })
    .map(({ base, method }) => ({ ...empty, ...base, method }));
  const put = base.chain((plan) =>
    hostileText.map((value) => ({
      ...empty,
      ...plan,
      kind: 'put' as const,
      method: 'PUT',
      path: `/quote/ask/photo?name=${encoded(value.slice(0, 1500))}`,
      parts: [{ name: 'body', value }],
    })),
  );
  const mild = fc.oneof({ weight: 4, arbitrary: fc.constant({}) }, { weight: 1, arbitrary: hostileHeaders });
  const act = fc
    .record({ base, mild, script: fc.boolean(), aim: aimOf(known), extra: partsOf(commonNames) })
    .map(
      ({ base, mild, script, aim, extra }): Plan => ({
        ...empty,
        ...base,
        headers: mild,
        kind: script ? 'with script' : 'without script',
        method: 'POST',
        path: aim.page ?? base.path,
        actionId: aim.actionId,
        bound: aim.bound,
        parts: [...aim.parts, ...extra],
      }),
    );
  return fc.oneof(
    { weight: 5, arbitrary: open },
    { weight: 7, arbitrary: act },
    { weight: 1, arbitrary: put },
  );
}

const empty: Plan = {
  kind: 'open',
  method: 'GET',
  path: '/',
  headers: {},
  actionId: '',
  bound: [],
  parts: [],
  harm: 'none',
};

type Aim = { page: string | null; actionId: string; bound: unknown[]; parts: Part[] };

/** A form that a page offers, changed here and there, or an action with whatever comes. */
function aimOf({ forms, actionIds }: Known): fc.Arbitrary<Aim> {
  const blind = fc.record({
    page: fc.constant(null),
    actionId: fc.constantFrom(...actionIds),
    bound: fc.array(hostileValue, { maxLength: 5 }),
    parts: partsOf(commonNames),
  });
  if (forms.length === 0) return blind;
  const offered = fc.constantFrom(...forms).chain((form) =>
    fc.record({
      page: fc.constant(form.page),
      actionId: fc.constant(form.actionId),
      bound: boundOf(form),
      parts: fc
        .tuple(...form.fields.map(([name, value]) => changed(name, value)))
        .map((parts) => parts.flat()),
    }),
  );
  return fc.oneof({ weight: 3, arbitrary: offered }, { weight: 1, arbitrary: blind });
}

function boundOf(form: FoundForm): fc.Arbitrary<unknown[]> {
  const as: unknown = JSON.parse(form.bound || '[]');
  const list = Array.isArray(as) ? as : [];
  const altered = fc.tuple(
    ...list.map((value: unknown) =>
      fc.oneof({ weight: 3, arbitrary: fc.constant(value) }, { weight: 1, arbitrary: hostileValue }),
    ),
  );
  return fc.oneof(
    { weight: 4, arbitrary: fc.constant(list) },
    { weight: 1, arbitrary: altered },
    { weight: 1, arbitrary: fc.array(hostileValue, { maxLength: 4 }) },
  );
}

function changed(name: string, value: string): fc.Arbitrary<Part[]> {
  return fc.oneof(
    { weight: 12, arbitrary: fc.constant<Part[]>([{ name, value }]) },
    { weight: 5, arbitrary: hostileText.map((other) => [{ name, value: other }]) },
    { weight: 1, arbitrary: fc.constant<Part[]>([]) },
    {
      weight: 1,
      arbitrary: hostileText.map((other) => [
        { name, value },
        { name, value: other },
      ]),
    },
    { weight: 1, arbitrary: hostileText.map((other) => [{ name, value: other, file: other.slice(0, 300) }]) },
  );
}

function partsOf(names: readonly string[]): fc.Arbitrary<Part[]> {
  const part = fc.record({
    name: fc.oneof(
      { weight: 6, arbitrary: fc.constantFrom(...names) },
      { weight: 1, arbitrary: hostileText.map((text) => text.slice(0, 200)) },
    ),
    value: hostileText,
  });
  return fc.oneof(
    { weight: 2, arbitrary: fc.constant<Part[]>([]) },
    { weight: 1, arbitrary: fc.array(part, { maxLength: 6 }) },
  );
}

function pathOf(route: RouteRow, places: Places): fc.Arbitrary<string> {
  const pieces = (route.example ?? route.path).split(/(\{\w+\}|\[\w+\])/);
  const each = pieces.map((piece) => {
    const name = /^[{[](\w+)[}\]]$/.exec(piece)?.[1];
    if (!name) return fc.constant(piece);
    const real = places[name] ?? [];
    const hostile = fc.oneof(
      hostileText.map((text) => encoded(text.slice(0, 2000))),
      fc.constantFrom(...rawPieces),
      fc.constantFrom(...Object.values(places).flat()),
    );
    return real.length === 0
      ? hostile
      : fc.oneof({ weight: 4, arbitrary: fc.constantFrom(...real) }, { weight: 1, arbitrary: hostile });
  });
  return fc.tuple(...each).map((parts) => parts.join(''));
}

function query(): fc.Arbitrary<string> {
  const pair = fc
    .tuple(
      fc.constantFrom(...queryNames),
      fc.oneof(
        { weight: 4, arbitrary: hostileText.map((text) => encoded(text.slice(0, 1500))) },
        { weight: 1, arbitrary: fc.constantFrom(...rawPieces) },
      ),
    )
    .map(([name, value]) => `${name}=${value}`);
  return fc.oneof(
    { weight: 2, arbitrary: fc.constant('') },
    {
      weight: 3,
      arbitrary: fc.array(pair, { minLength: 1, maxLength: 4 }).map((pairs) => `?${pairs.join('&')}`),
    },
  );
}

/** Percent-encoded, half a pair of surrogates as the bytes no text has. */
function encoded(text: string): string {
  return text.isWellFormed()
    ? encodeURIComponent(text)
    : `%ED%A0%80${encodeURIComponent(text.toWellFormed())}`;
}
