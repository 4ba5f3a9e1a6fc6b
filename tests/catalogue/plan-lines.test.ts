import { expect, test } from 'vitest';
import type { ImportPlan } from '@/lib/catalogue/rules/plan-import';
import { planLines } from '@/lib/catalogue/rules/plan-lines';
import { DEMO_MODELS, DEMO_REPAIRS } from '@/prisma/demo/catalogue';

test('what an import does stands in the order of the file, a family before its model and the model before its repair', () => {
  const [model, repair] = [DEMO_MODELS[0], DEMO_REPAIRS[0]];
  if (!model || !repair) throw new Error('the demonstration has a model and a repair');
  const { key: _, id: __, familyId: ___, slug: ____, ...data } = model;
  const price = { column: 'price' as const, before: '72.00', after: '75.00' };
  const plan: ImportPlan = {
    families: [{ row: 4, id: null, slug: 'tuners', data: { name: 'Tuners', position: 6 }, fields: [] }],
    models: [
      {
        row: 4,
        id: null,
        slug: 'x-y',
        data: { ...data, isListed: true, tariffNumber: '', familySlug: 'tuners' },
        fields: [],
      },
    ],
    repairs: [
      {
        row: 2,
        id: 'r',
        slug: 'usb-socket',
        data: { ...repair, isListed: true, policy: 'P', parts: [], modelSlug: 'tideline-meridian-two' },
        fields: [price],
      },
    ],
    unchanged: { families: 0, models: 0, repairs: 0 },
    problems: [],
  };
  expect(planLines(plan).map((line) => [line.row, line.of, line.address, line.isNew])).toEqual([
    [2, 'repair', 'tideline-meridian-two#usb-socket', false],
    [4, 'family', 'tuners', true],
    [4, 'model', 'x-y', true],
  ]);
});
