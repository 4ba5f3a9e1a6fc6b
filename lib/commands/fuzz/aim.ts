import fc from 'fast-check';
import { filled } from './filled';
import { type FoundForm, untouched } from './forms';
import { hostileText, hostileValue } from './hostile';
import type { Places } from './places';
import type { Known, Part } from './requests';

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
  'mark',
  'lines',
  '__proto__',
  'constructor',
  'then',
  'toJSON',
  '$ACTION_KEY',
];

/** Which action is asked, and with what. */
export type Aim = {
  /** null: any address */
  page: string | null;
  actionId: string;
  bound: unknown[];
  parts: Part[];
  /** nothing else about the request may be broken: what is wrong is in the fields, or comes at the wrong moment */
  isWhole: boolean;
};

/** A form that a page offers, filled in, changed here and there or all over, or an action with whatever comes. */
export function aimOf({ forms, actionIds, places, list }: Known): fc.Arbitrary<Aim> {
  const blind = fc.record({
    page: fc.constant(null),
    actionId: fc.constantFrom(...actionIds),
    bound: fc.array(hostileValue, { maxLength: 5 }),
    parts: partsOf(commonNames),
    isWhole: fc.constant(false),
  });
  if (forms.length === 0) return blind;
  // Each action as often as any other, however many pages offer it.
  const byAction = [...new Set(forms.map(({ actionId }) => actionId))].map((id) =>
    forms.filter(({ actionId }) => actionId === id),
  );
  const offered = fc
    .constantFrom(...byAction)
    .chain((same) => fc.constantFrom(...same))
    .chain((form) => {
      const { page, actionId } = form;
      const aim = (bound: fc.Arbitrary<unknown[]>, parts: fc.Arbitrary<Part[]>, isWhole: boolean) =>
        fc.record({ bound, parts }).map((sent): Aim => ({ page, actionId, ...sent, isWhole }));
      const well = fc.tuple(...form.fields.map((field) => filled(field, list)));
      const all = well.map((parts) => parts.flat());
      return fc.oneof(
        { weight: 3, arbitrary: aim(fc.constant(listOf(form)), all, true) },
        { weight: 3, arbitrary: aim(fc.constant(listOf(form)), spoilt(well), true) },
        { weight: 1, arbitrary: aim(boundOf(form, places), all, true) },
        { weight: 3, arbitrary: aim(boundOf(form, places), brokenAllOver(form), false) },
      );
    });
  return fc.oneof({ weight: 4, arbitrary: offered }, { weight: 1, arbitrary: blind });
}

/** One or two fields of a form that is filled in otherwise. */
function spoilt(well: fc.Arbitrary<Part[][]>): fc.Arbitrary<Part[]> {
  return fc
    .tuple(well, fc.array(fc.tuple(fc.nat(), hostileText), { minLength: 1, maxLength: 2 }))
    .map(([fields, changes]) => {
      const parts = fields.flat();
      for (const [at, value] of changes) {
        const part = parts[at % Math.max(1, parts.length)];
        if (part && part.bytes === undefined) parts[at % parts.length] = { ...part, value };
      }
      return parts;
    });
}

function brokenAllOver(form: FoundForm): fc.Arbitrary<Part[]> {
  return fc
    .tuple(fc.tuple(...untouched(form).map(({ name, value }) => changed(name, value))), partsOf(commonNames))
    .map(([parts, extra]) => [...parts.flat(), ...extra]);
}

function listOf(form: FoundForm): unknown[] {
  const as: unknown = JSON.parse(form.bound || '[]');
  return Array.isArray(as) ? as : [];
}

/** What the page bound, one piece of it another thing that there is or no such thing, or anything. */
function boundOf(form: FoundForm, places: Places): fc.Arbitrary<unknown[]> {
  const list = listOf(form);
  const real = Object.values(places).flat();
  const altered = fc.tuple(
    ...list.map((value) =>
      fc.oneof(
        { weight: 3, arbitrary: fc.constant(value) },
        { weight: 1, arbitrary: fc.constantFrom(...real) },
        { weight: 1, arbitrary: hostileValue },
      ),
    ),
  );
  return fc.oneof(
    { weight: 2, arbitrary: fc.constant(list) },
    { weight: 2, arbitrary: altered },
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
