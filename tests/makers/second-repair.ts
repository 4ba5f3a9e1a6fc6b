import { db } from '@/lib/db/client';
import type { makeWorkshop } from './workshop';

type World = Awaited<ReturnType<typeof makeWorkshop>>;

/** A repair beside the workshop’s first, of the same model or another, with a policy of its own and a sheet of one check. */
export async function makeFaderRepair({ modelId }: Pick<World, 'modelId'>, now: Date, name = 'Faders') {
  const policy = await db.policy.create({
    data: {
      name,
      versions: {
        create: {
          version: 1,
          startEvent: 'handed-to-carrier',
          workTerm: 'P6M',
          partsTerm: 'P6M',
          exclusions: [],
          renewedMinimum: 'P90D',
          heldRule: 'whole-days',
          graceDays: 7,
          createdAt: now,
        },
      },
    },
    include: { versions: true },
  });
  const repair = await db.repair.create({
    data: {
      modelId,
      slug: 'fader',
      name: 'Fader replaced',
      summary: 'A new fader.',
      priceMinor: 6000,
      taxRateBps: 2000,
      minutes: 90,
      workingDays: 8,
      symptoms: ['A fader scratches'],
      policyId: policy.id,
      sheets: {
        create: {
          version: 1,
          createdAt: now,
          checks: { create: [{ position: 0, kind: 'tick', label: 'Fader runs silently' }] },
        },
      },
    },
    include: { sheets: { include: { checks: true } } },
  });
  const check = repair.sheets[0]?.checks[0];
  if (!check) throw new Error('the maker made no check');
  return { repairId: repair.id, checkId: check.id, policyVersionId: policy.versions[0]?.id };
}

/** A second model of the family, booked as one without a battery. */
export async function makeSisterModel(world: Pick<World, 'modelId'>) {
  const { familyId } = await db.model.findUniqueOrThrow({ where: { id: world.modelId } });
  return db.model.create({
    data: {
      familyId,
      slug: 'tideline-hw3',
      maker: 'Tideline',
      name: 'HW-3',
      battery: 'none',
      accessories: [],
    },
  });
}
