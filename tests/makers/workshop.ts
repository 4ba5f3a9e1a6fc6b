import { db } from '@/lib/db/client';
import type { Actor } from '@/lib/jobs/actor';
import { prepareQueue } from '@/lib/mail/boss';

export const BENCH: Extract<Actor, { id: string }> = { kind: 'staff', id: 'user-bench', initials: 'NP' };
export const OWNER: Extract<Actor, { id: string }> = { kind: 'owner', id: 'user-owner', initials: 'QA' };

/** A small Quay & Alder: one field recorder with one repair, its policy, a sheet of two checks, and one part lot. */
export async function makeWorkshop(now: Date) {
  await prepareQueue();
  await db.workshop.create({
    data: {
      id: 1,
      name: 'Quay & Alder',
      tagline: 'Repairs by post',
      addressLines: ['4 Slip Lane'],
      postcode: 'QM1 4QA',
      town: 'Sandmouth',
      country: 'GB',
      email: 'bench@quayandalder.example.org',
      phone: '01632 960101',
      timeZone: 'Europe/London',
      currency: 'GBP',
      locale: 'en-GB',
      holidayCountry: 'GB',
      holidayRegion: 'ENG',
      returnFeeMinor: 960,
      inspectionFeeMinor: 1800,
      labourRateMinor: 4800,
      paymentText: 'Bank transfer with the job number.',
      packingText: ['Wrap the unit'],
      termsText: 'Terms',
      privacyText: 'Privacy',
      territory: 'the United Kingdom',
      updatedAt: now,
    },
  });
  for (const [actor, role] of [
    [BENCH, 'bench'],
    [OWNER, 'owner'],
  ] as const) {
    await db.user.create({
      data: {
        id: actor.id,
        name: role === 'owner' ? 'Odile Quay' : 'Nils Pier',
        email: `${role}@quayandalder.example.org`,
        role,
        initials: actor.initials,
      },
    });
  }
  const family = await db.family.create({ data: { slug: 'field-recorders', name: 'Field recorders' } });
  const model = await db.model.create({
    data: {
      familyId: family.id,
      slug: 'tideline-hw2',
      maker: 'Tideline',
      name: 'HW-2',
      battery: 'lithium-ion',
      batteryWh: 9.6,
      accessories: ['Power supply', 'Case'],
    },
  });
  const policy = await db.policy.create({
    data: {
      name: 'Connector work',
      versions: {
        create: {
          version: 1,
          startEvent: 'handed-to-carrier',
          workTerm: 'P12M',
          partsTerm: 'P12M',
          exclusions: ['Damage by liquid after the return'],
          renewedMinimum: 'P90D',
          heldRule: 'whole-days',
          graceDays: 7,
          createdAt: now,
        },
      },
    },
  });
  const repair = await db.repair.create({
    data: {
      modelId: model.id,
      slug: 'usb-socket',
      name: 'USB-C socket replaced',
      summary: 'A new socket, soldered and anchored.',
      priceMinor: 7200,
      taxRateBps: 2000,
      minutes: 60,
      workingDays: 5,
      symptoms: ['Does not charge', 'Cable falls out'],
      policyId: policy.id,
      sheets: {
        create: {
          version: 1,
          createdAt: now,
          checks: {
            create: [
              { position: 0, kind: 'reading', label: 'Charge voltage', unit: 'V', low: 4.75, high: 5.25 },
              { position: 1, kind: 'tick', label: 'Cable holds when tilted' },
            ],
          },
        },
      },
    },
    include: { sheets: { include: { checks: { orderBy: { position: 'asc' } } } } },
  });
  const part = await db.part.create({
    data: {
      code: 'USB-C-16',
      name: 'USB-C socket, 16 pin',
      lots: {
        create: {
          code: 'L-2611',
          supplier: 'Harbour Components',
          receivedOn: now,
          received: 5,
          inStock: 5,
          unitCostMinor: 180,
        },
      },
    },
    include: { lots: true },
  });
  const [voltage, tilt] = repair.sheets[0]?.checks ?? [];
  const [lot] = part.lots;
  if (!voltage || !tilt || !lot) throw new Error('the maker made no checks or lot');
  return { modelId: model.id, repairId: repair.id, voltage: voltage.id, tilt: tilt.id, lotId: lot.id };
}

/**
 * Moves the workshop to where a day begins up to thirteen hours before it does in UTC. In London's winter the two are the same,
 * and a verb that asks for the wrong zone's day would not be seen.
 */
export async function moveToAuckland(): Promise<void> {
  await db.workshop.update({ where: { id: 1 }, data: { timeZone: 'Pacific/Auckland' } });
}
