import { addDays, dayInZone, dayToDate } from '@/lib/calendar/day';
import { instantDaysBefore } from '@/lib/calendar/spans';
import type { Tx } from '@/lib/db/transaction';
import { DEMO_FAMILIES, DEMO_MODELS } from './catalogue-models';
import { DEMO_PARTS } from './catalogue-parts';
import { DEMO_POLICIES } from './catalogue-policies';
import { DEMO_REPAIRS } from './catalogue-repairs';
import { demoId } from './demo-id';
import { DEMO_WORKSHOP } from './workshop';

export { DEMO_FAMILIES, DEMO_MODELS, DEMO_PARTS, DEMO_POLICIES, DEMO_REPAIRS };

/** Policies and first sheets are older than every job of the demonstration. */
export const CATALOGUE_AGE_DAYS = 460;
/** Later versions of a sheet came in the middle of its history. */
export const LATER_SHEET_AGE_DAYS = 200;

/**
 * Writes the catalogue of Quay & Alder: families, models, policies, repairs with their prices and check sheets, parts with their
 * lots.
 * Everything has a fixed id; only the days differ with `now`. Lots are full: jobs that use parts lower the stock themselves. With `sheets: 'first'`
 * the later versions of check sheets are left out, for a history in which they come in their time.
 */
export async function loadCatalogue(
  tx: Tx,
  now: Date,
  o: { sheets: 'all' | 'first' } = { sheets: 'all' },
): Promise<void> {
  const began = instantDaysBefore(now, CATALOGUE_AGE_DAYS);
  await tx.family.createMany({ data: DEMO_FAMILIES.map(({ key: _, ...family }) => family) });
  await tx.model.createMany({ data: DEMO_MODELS.map(({ key: _, ...model }) => model) });
  await tx.policy.createMany({ data: DEMO_POLICIES.map(({ id, name }) => ({ id, name })) });
  await tx.policyVersion.createMany({
    data: DEMO_POLICIES.map(({ id, versionId, terms }) => ({
      ...terms,
      id: versionId,
      policyId: id,
      version: 1,
      createdAt: began,
    })),
  });
  await tx.repair.createMany({
    data: DEMO_REPAIRS.map(
      ({ key: _, model: __, policy: ___, parts: ____, sheets: _____, ...repair }) => repair,
    ),
  });
  await tx.repairPrice.createMany({
    data: DEMO_REPAIRS.map(({ id, priceMinor, taxCategory, taxRateBps }) => ({
      repairId: id,
      priceMinor,
      isGross: DEMO_WORKSHOP.pricesIncludeTax,
      taxCategory,
      taxRateBps,
      since: began,
    })),
  });
  const sheets = DEMO_REPAIRS.flatMap((repair) =>
    repair.sheets
      .filter((sheet) => o.sheets === 'all' || sheet.version === 1)
      .map((sheet) => ({ ...sheet, repairId: repair.id })),
  );
  await tx.checkSheet.createMany({
    data: sheets.map(({ id, repairId, version }) => ({
      id,
      repairId,
      version,
      createdAt: version === 1 ? began : instantDaysBefore(now, LATER_SHEET_AGE_DAYS),
    })),
  });
  await tx.check.createMany({
    data: sheets.flatMap((sheet) => sheet.checks.map((check) => ({ ...check, sheetId: sheet.id }))),
  });
  await loadParts(tx, now);
  await tx.repairPart.createMany({
    data: DEMO_REPAIRS.flatMap((repair) =>
      repair.parts.map(([code, quantity]) => ({
        repairId: repair.id,
        partId: demoId('part', code),
        quantity,
      })),
    ),
  });
}

async function loadParts(tx: Tx, now: Date): Promise<void> {
  await tx.part.createMany({ data: DEMO_PARTS.map(({ lots: _, ...part }) => part) });
  const today = dayInZone(now, 'Europe/London');
  await tx.lot.createMany({
    data: DEMO_PARTS.flatMap((part) =>
      part.lots.map(({ daysAgo, ...lot }) => ({
        ...lot,
        partId: part.id,
        receivedOn: dayToDate(addDays(today, -daysAgo)),
        inStock: lot.received,
      })),
    ),
  });
}
