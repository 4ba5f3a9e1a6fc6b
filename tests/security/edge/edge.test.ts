import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseForm } from '@/app/ui/forms/parse-form';
import { hostileText } from '@/lib/commands/fuzz/hostile';
import { LARGEST_KEPT } from '@/lib/numbers/column';
import { edgeForms, type Form } from './forms';
import { appSources, edgeSchemas, schemaFiles } from './schemas';

const schemas = await edgeSchemas();
const cases = [...schemas].map(([name, schema]) => ({
  name,
  schema,
  form: edgeForms.get(name) ?? { fields: {} },
}));

describe('what is sent is read by a schema that is tried here', () => {
  test('every schema has a form filled in, and no form is left over', () => {
    expect(schemas.size).toBeGreaterThan(70);
    expect([...edgeForms.keys()].sort()).toEqual([...schemas.keys()].sort());
  });

  test('no schema is made elsewhere in the app', () => {
    // Only their examples make one.
    const pieces = ['app/ui/forms/parse-form.ts', 'app/ui/forms/counted-field.ts'];
    const made = appSources.filter(({ text }) =>
      /\bz\s*\.(object|looseObject|strictObject|record)\(/.test(text),
    );
    expect(
      made
        .map(({ file }) => file)
        .filter((file) => !pieces.includes(file))
        .sort(),
    ).toEqual(
      made
        .map(({ file }) => file)
        .filter((file) => schemaFiles.includes(file))
        .sort(),
    );
    for (const { file, text } of appSources) {
      if (schemaFiles.includes(file)) continue;
      expect(text, `${file} extends a schema of its own`).not.toMatch(
        /^const \w+ = \w+\s*\.(extend|merge|omit)\(/m,
      );
    }
  });
});

describe.each(cases)('$name', ({ schema, form }) => {
  const names = Object.keys(form.fields);
  const own: Sent = new Map(Object.entries(form.fields).map(([name, value]) => [name, asList(value)]));
  const judge = (sent: Sent) => judged(parseForm(schema, formOf(sent), form.lists), names);

  test('takes the form filled in, and the same again', () => {
    const taken = judge(own);
    if (!taken) expect.fail('the form filled in is refused');
    expect(judge(sentAgain(own, taken))).toEqual(taken);
  });

  test('refuses with a sentence at a field or takes within limits, whatever is sent', () => {
    for (const name of names) {
      for (const extreme of EXTREMES) {
        const sent: Sent = new Map([...own, [name, extreme]]);
        const taken = judge(sent);
        if (taken) expect(judge(sentAgain(sent, taken)), 'kept, shown and sent again').toEqual(taken);
      }
    }
    const change = fc.tuple(fc.constantFrom(...names, 'other', '__proto__'), entries);
    fc.assert(
      fc.property(fc.array(change, { minLength: 1, maxLength: 3 }), (changes) => {
        const sent: Sent = new Map([...own, ...changes]);
        const taken = judge(sent);
        if (taken) expect(judge(sentAgain(sent, taken)), 'kept, shown and sent again').toEqual(taken);
      }),
      { numRuns: 60 },
    );
  });
});

type Sent = ReadonlyMap<string, readonly (string | File)[]>;
type Taken = Readonly<Record<string, unknown>>;

/** What a form was taken as, within limits; null when it was refused in words of the house at fields that it has. */
function judged(parsed: ReturnType<typeof parseForm>, names: readonly string[]): Taken | null {
  if (parsed.ok) {
    refuseBeyondLimits(parsed.data);
    return Object.fromEntries(Object.entries(parsed.data ?? {}));
  }
  const { errors = {}, message } = parsed.state;
  expect(Object.keys(errors).length > 0 || Boolean(message)).toBe(true);
  for (const [name, sentences] of Object.entries(errors)) {
    expect(names).toContain(name);
    for (const sentence of sentences) expect(sentence, name).toMatch(SENTENCE);
  }
  return null;
}

/** The same form with the texts that were kept in place of those that were typed. */
function sentAgain(sent: Sent, taken: Taken): Sent {
  return new Map(
    [...sent].map(([name, entries]) => {
      const kept = taken[name];
      return [name, typeof kept === 'string' ? [kept] : entries];
    }),
  );
}

/** Words of the house, not the library's own: those begin so (zod 4, locales/en). */
const SENTENCE = /^(?!Invalid |Too (big|small)|Unrecognized |Expected )[A-Z].{4,200}$/s;

/** One value, several, none, or a file where a text belongs. */
const entries = fc.oneof(
  { weight: 8, arbitrary: hostileText.map((text): readonly (string | File)[] => [text]) },
  { weight: 1, arbitrary: fc.constant<readonly (string | File)[]>([]) },
  { weight: 1, arbitrary: fc.array(hostileText, { maxLength: 30 }) },
  { weight: 1, arbitrary: fc.constant<readonly (string | File)[]>([new File(['x'], 'x.jpg')]) },
);

/** What every field is sent once: too long, too large, nothing, twice, a file. */
const EXTREMES: readonly (readonly (string | File)[])[] = [
  [' \ufeff '],
  ['x'.repeat(50_000)],
  ['9'.repeat(50_000)],
  [`${' '.repeat(50_000)}1`],
  ['1e308'],
  ['2147483648'],
  ['-2147483649'],
  ['+275760-09-13T00:00:00.000Z'],
  [],
  ['a', 'b'],
  [new File(['x'], 'x.jpg')],
];

const READINGS = ['low', 'high', 'milliohms'];

function formOf(sent: Sent): FormData {
  const data = new FormData();
  for (const [name, entries] of sent) for (const entry of entries) data.append(name, entry);
  return data;
}

function asList(value: Form['fields'][string]): readonly (string | File)[] {
  return typeof value === 'string' || value instanceof File ? [value] : value;
}

/** Nothing longer than the longest text a form takes, no number or day that its column could not keep. */
function refuseBeyondLimits(value: unknown, at = 'the form'): void {
  if (typeof value === 'string') expect(value.length, at).toBeLessThanOrEqual(40_000);
  if (typeof value === 'number') {
    expect(Number.isFinite(value), `${at} is ${value}`).toBe(true);
    // Readings are kept as fractions, everything else as whole numbers of four bytes.
    expect(Math.abs(value), at).toBeLessThanOrEqual(READINGS.includes(at) ? Number.MAX_VALUE : LARGEST_KEPT);
  }
  if (value instanceof Date) expect(value.getTime(), at).toBeGreaterThanOrEqual(0);
  else if (value instanceof Map) for (const [key, part] of value) refuseBeyondLimits(part, `${at}, ${key}`);
  else if (Array.isArray(value)) {
    expect(value.length, at).toBeLessThanOrEqual(200);
    for (const part of value) refuseBeyondLimits(part, at);
  } else if (typeof value === 'object' && value !== null && !(value instanceof File)) {
    for (const [name, part] of Object.entries(value)) refuseBeyondLimits(part, name);
  }
}
