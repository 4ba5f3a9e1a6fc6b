'use server';
import type { z } from 'zod';
import { onlyCounts, onlyPlain } from '@/app/only-plain';
import type { FormAction, FormState } from '@/app/ui/forms/form-state';
import { onForm } from '@/app/workshop/on-form';
import { readTable } from '@/lib/bench/pin-table-records';
import type { CheckDraft } from '@/lib/bench/rules/check-problems';
import { connectorChecks } from '@/lib/bench/rules/connector-sheet';
import { mainsChecks } from '@/lib/bench/rules/mains-checks';
import { solderFillCheck } from '@/lib/bench/rules/solder-fill';
import { adding, moving, removing, replacing } from '@/lib/catalogue/rules/sheet-changes';
import { saveCheckSheet } from '@/lib/catalogue/save-check-sheet';
import type { SheetWrite } from '@/lib/catalogue/write-check-sheet';
import { Refusal } from '@/lib/outcome';
import { checkSchema } from './check-schema';
import { placeSchema, readySchema } from './schema';

/** Puts a new check at the end of the sheet. */
export const addCheckAction: FormAction<[repairId: string, basedOn: number]> = async (
  repairId,
  basedOn,
  _before,
  formData,
) => {
  onlyPlain(repairId);
  onlyCounts(basedOn);
  return onSheet({
    repairId,
    basedOn,
    formData,
    schema: checkSchema,
    change: async (check) => adding(await sound(check)),
  });
};

/** Replaces one check; a lesson it was taught by a claim stays with it. */
export const changeCheckAction: FormAction<[repairId: string, basedOn: number, position: number]> = async (
  repairId,
  basedOn,
  position,
  _before,
  formData,
) => {
  onlyPlain(repairId);
  onlyCounts(basedOn, position);
  return onSheet({
    repairId,
    basedOn,
    formData,
    schema: checkSchema,
    change: async (check) => replacing(position, await sound(check)),
  });
};

/** Moves one check up or down, or takes it off the sheet. */
export const moveCheckAction: FormAction<[repairId: string, basedOn: number]> = async (
  repairId,
  basedOn,
  _before,
  formData,
) => {
  onlyPlain(repairId);
  onlyCounts(basedOn);
  return onSheet({
    repairId,
    basedOn,
    formData,
    schema: placeSchema,
    change: ({ position, move }) =>
      move === 'off' ? removing(position) : moving(position, move === 'up' ? -1 : 1),
  });
};

/** Adds a ready-made set: the checks of a connector, or the template for mains equipment. */
export const addReadyChecksAction: FormAction<[repairId: string, basedOn: number]> = async (
  repairId,
  basedOn,
  _before,
  formData,
) => {
  onlyPlain(repairId);
  onlyCounts(basedOn);
  return onSheet({
    repairId,
    basedOn,
    formData,
    schema: readySchema,
    change: async ({ ready }) => adding(...(await readyChecks(ready))),
  });
};

/** A change of the sheet that the form was drawn from, which becomes its next version. */
async function onSheet<S extends z.ZodType>(o: {
  repairId: string;
  basedOn: number;
  formData: FormData;
  schema: S;
  change: (data: z.output<S>) => SheetWrite['change'] | Promise<SheetWrite['change']>;
}): Promise<FormState> {
  const { repairId, basedOn } = o;
  return onForm(o.formData, {
    permission: 'catalogue',
    schema: o.schema,
    work: async ({ data, now }) => saveCheckSheet({ repairId, basedOn, change: await o.change(data), now }),
    after: (saved) => `/workshop/catalogue/repairs/${repairId}/sheet?saved=${saved}`,
  });
}

/** The check, where it names no connector or one that there is. */
async function sound(check: CheckDraft): Promise<CheckDraft> {
  if (check.pinTable && (await readTable(check.pinTable)) === null)
    throw new Refusal('invalid', 'Choose one of the connectors', 'pinTable');
  return check;
}

async function readyChecks(key: string): Promise<CheckDraft[]> {
  if (key === 'mains-1' || key === 'mains-2') return mainsChecks(key === 'mains-1' ? 1 : 2);
  const fill = solderFillCheck(key);
  if (fill) return [fill];
  const table = await readTable(key);
  if (!table) throw new Refusal('invalid', 'Choose a set of checks', 'ready');
  return connectorChecks(table);
}
