import { beforeEach, expect, it } from 'vitest';
import { savePart } from '@/lib/bench/save-part';
import { type ModelInput, saveModel } from '@/lib/catalogue/save-model';
import { MODEL_FIELDS } from '@/lib/catalogue/shown-fields';
import { db } from '@/lib/db/client';
import { attempt, type Outcome } from '@/lib/outcome';
import { changeStaff } from '@/lib/people/change-staff';
import { resetDatabase, useDatabase } from '@/tests/database';
import { shownNow } from '@/tests/makers/shown';
import { BENCH, makeWorkshop } from '@/tests/makers/workshop';

const NOW = new Date('2026-11-25T09:00:00Z');

useDatabase();
beforeEach(resetDatabase);

const codes = (outcomes: readonly Outcome<unknown>[]) =>
  outcomes.map((outcome) => (outcome.ok ? 'done' : outcome.refusal.code)).sort();

const nils = { name: 'Nils Pier', email: 'bench@quayandalder.example.org', role: 'bench' } as const;

it('of several who save one page at once one wins and the others are told, for a person, a model and a part', async () => {
  const { modelId } = await makeWorkshop(NOW);
  const person = await shownNow('person', BENCH.id);
  const people = ['NA', 'NB', 'NC'].map((initials) =>
    attempt(() => changeStaff(person, { ...nils, initials, isActive: true })),
  );
  expect(codes(await Promise.all(people))).toEqual(['conflict', 'conflict', 'done']);

  const row = await db.model.findUniqueOrThrow({ where: { id: modelId }, select: MODEL_FIELDS });
  const input = { ...row, battery: 'lithium-ion', serialRule: 'none' } satisfies ModelInput;
  const model = await shownNow('model', modelId);
  const models = ['Inside', 'Underneath', 'On the back'].map((serialPlace) =>
    attempt(() => saveModel(model, { ...input, serialPlace })),
  );
  expect(codes(await Promise.all(models))).toEqual(['conflict', 'conflict', 'done']);

  const { id, code } = await db.part.findFirstOrThrow();
  const part = await shownNow('part', id);
  const parts = [2, 3, 4].map((reorderAt) =>
    attempt(() => savePart(part, { code, name: 'USB-C socket, 16 pin', term: null, reorderAt })),
  );
  expect(codes(await Promise.all(parts))).toEqual(['conflict', 'conflict', 'done']);
});
