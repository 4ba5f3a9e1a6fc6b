import fc from 'fast-check';
import type { RouteRow } from '@/e2e/world/routes';
import { aimOf } from './aim';
import { hostilePhoto } from './files';
import type { FoundForm } from './forms';
import { hostileHeaders, hostileText } from './hostile';
import type { Places } from './places';

export type Part = { name: string; value: string; file?: string; bytes?: Buffer };

/** What is to be sent; its bytes are made only when it is, since some are large. */
export type Plan = {
  /** the row of the table of routes that the address was made of */
  route: string;
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
  /** the workshop's catalogue as its own file */
  list: string;
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
/** Requests of every kind there is, made of what the app has: its addresses, its actions and the forms of its pages. */
export function hostileRequest(known: Known): fc.Arbitrary<Plan> {
  const address = fc.tuple(fc.constantFrom(...known.routes), query()).chain(([route, asked]) =>
    pathOf(route, known.places).map((path) => ({
      route: route.path,
      path: path + (path.includes('?') ? asked.replace('?', '&') : asked),
    })),
  );
  const harm = fc.oneof(
    { weight: 12, arbitrary: fc.constant<Plan['harm']>('none') },
    { weight: 3, arbitrary: fc.constantFrom<Plan['harm']>('cut', 'type', 'boundary', 'text', 'root') },
  );
  const base = fc
    .record({ address, headers: hostileHeaders, harm })
    .map(({ address, headers, harm }) => ({ ...address, headers, harm }));
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
    fc
      .tuple(
        hostileText,
        fc.oneof(
          hostilePhoto,
          hostileText.map((text) => Buffer.from(text)),
        ),
      )
      .map(([name, bytes]) => ({
        ...empty,
        ...plan,
        route: '/photo',
        kind: 'put' as const,
        method: 'PUT',
        path: `/photo?name=${encoded(name.slice(0, 1500))}`,
        parts: [{ name: 'body', value: '', bytes }],
      })),
  );
  const mild = fc.oneof({ weight: 4, arbitrary: fc.constant({}) }, { weight: 1, arbitrary: hostileHeaders });
  const act = fc.record({ base, mild, script: fc.boolean(), aim: aimOf(known) }).map(
    ({ base, mild, script, aim }): Plan => ({
      ...empty,
      ...base,
      headers: aim.isWhole ? {} : mild,
      harm: aim.isWhole ? 'none' : base.harm,
      kind: script ? 'with script' : 'without script',
      method: 'POST',
      path: aim.page ?? base.path,
      actionId: aim.actionId,
      bound: aim.bound,
      parts: aim.parts,
    }),
  );
  return fc.oneof(
    { weight: 5, arbitrary: open },
    { weight: 7, arbitrary: act },
    { weight: 1, arbitrary: put },
  );
}

const empty: Plan = {
  route: '',
  kind: 'open',
  method: 'GET',
  path: '/',
  headers: {},
  actionId: '',
  bound: [],
  parts: [],
  harm: 'none',
};

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
