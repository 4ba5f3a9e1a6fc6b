'use server';
import type { z } from 'zod';
import { onlyPlain, onlyPlainOrNew } from '@/app/only-plain';
import type { FormState } from '@/app/ui/forms/form-state';
import { shownIn } from '@/app/ui/forms/shown-in';
import { onForm } from '@/app/workshop/on-form';
import { addLot } from '@/lib/bench/add-lot';
import { addToLot } from '@/lib/bench/add-to-lot';
import { correctLot } from '@/lib/bench/correct-lot';
import { savePart } from '@/lib/bench/save-part';
import { writeOffLot } from '@/lib/bench/write-off-lot';
import type { WorkshopCard } from '@/lib/workshop/records';
import { correctLotSchema, lotSchema, moreOfLotSchema, partSchema, writeOffSchema } from './part-schema';

/** Adds a part, or changes the one whose id is bound, and shows it. */
export async function savePartAction(
  id: string | null,
  _before: FormState,
  formData: FormData,
): Promise<FormState> {
  onlyPlainOrNew(id);
  return onForm({
    permission: 'bench',
    formData,
    schema: partSchema,
    work: ({ data }) => savePart(shownIn(id, formData), data),
    after: (part) => `/workshop/parts/${part}?saved=yes`,
  });
}

/** Books a delivery of the bound part in as a new lot. */
export async function addLotAction(
  partId: string,
  _before: FormState,
  formData: FormData,
): Promise<FormState> {
  onlyPlain(partId);
  return onForm({
    permission: 'bench',
    formData,
    schema: ({ currency }) => lotSchema(currency),
    work: ({ data }) => addLot({ ...data, partId }),
    after: () => `/workshop/parts/${partId}?saved=yes`,
  });
}

/** Puts right what was typed of the bound lot. */
export async function correctLotAction(
  lotId: string,
  _before: FormState,
  formData: FormData,
): Promise<FormState> {
  onlyPlain(lotId);
  return onLot({
    lotId,
    formData,
    schema: ({ currency }) => correctLotSchema(currency),
    work: (data, by) => correctLot(shownIn(lotId, formData), data, by),
  });
}

/** Adds pieces of the bound lot. */
export async function addToLotAction(
  lotId: string,
  _before: FormState,
  formData: FormData,
): Promise<FormState> {
  onlyPlain(lotId);
  return onLot({
    lotId,
    formData,
    schema: ({ currency }) => moreOfLotSchema(currency),
    work: (data, by) => addToLot({ ...data, ...by, lotId }),
  });
}

/** Takes pieces of the bound lot out of stock without a job. */
export async function writeOffAction(
  lotId: string,
  _before: FormState,
  formData: FormData,
): Promise<FormState> {
  onlyPlain(lotId);
  return onLot({
    lotId,
    formData,
    schema: writeOffSchema,
    work: (data, by) => writeOffLot({ ...data, ...by, lotId }),
  });
}

/** What somebody at the bench does to a lot, kept in its history under their name; then the lot is shown. */
async function onLot<S extends z.ZodType>(o: {
  lotId: string;
  formData: FormData;
  schema: S | ((workshop: WorkshopCard) => S);
  work: (data: z.output<S>, by: { userId: string; now: Date }) => Promise<unknown>;
}): Promise<FormState> {
  return onForm({
    permission: 'bench',
    formData: o.formData,
    schema: o.schema,
    work: ({ data, actor, now }) => o.work(data, { userId: actor.id, now }),
    after: () => `/workshop/parts/lots/${o.lotId}?saved=yes`,
  });
}
