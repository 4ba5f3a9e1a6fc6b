'use server';
import type { z } from 'zod';
import { onlyPlain, onlyPlainOrNew } from '@/app/only-plain';
import type { FormAction, FormState } from '@/app/ui/forms/form-state';
import { shownIn } from '@/app/ui/forms/shown-in';
import { onForm } from '@/app/workshop/on-form';
import { addLot } from '@/lib/bench/add-lot';
import { addToLot } from '@/lib/bench/add-to-lot';
import { endOrder, expectOrder } from '@/lib/bench/change-order';
import { correctLot } from '@/lib/bench/correct-lot';
import { orderParts } from '@/lib/bench/order-parts';
import { savePart } from '@/lib/bench/save-part';
import { writeOffLot } from '@/lib/bench/write-off-lot';
import type { WorkshopCard } from '@/lib/workshop/records';
import {
  correctLotSchema,
  endOrderSchema,
  expectOrderSchema,
  lotSchema,
  moreOfLotSchema,
  orderSchema,
  partSchema,
  writeOffSchema,
} from './part-schema';

/** Adds a part, or changes the one whose id is bound, and shows it. */
export const savePartAction: FormAction<[id: string | null]> = async (id, _before, formData) => {
  onlyPlainOrNew(id);
  return onForm(formData, {
    permission: 'bench',
    schema: partSchema,
    work: ({ data }) => savePart(shownIn(id, formData), data),
    after: (part) => `/workshop/parts/${part}?saved=yes`,
  });
};

/** Books a delivery of the bound part in as a new lot. */
export const addLotAction: FormAction<[partId: string]> = async (partId, _before, formData) => {
  onlyPlain(partId);
  return onForm(formData, {
    permission: 'bench',
    schema: ({ currency }) => lotSchema(currency),
    work: ({ data: { order, ...lot }, actor, now }) =>
      addLot({ ...lot, partId }, order ? { orderId: order, userId: actor.id, now } : null),
    after: () => `/workshop/parts/${partId}?saved=yes`,
  });
};

/** Notes what was ordered, and shows the order list without it. */
export const orderPartsAction: FormAction = async (_before, formData) =>
  onForm(formData, {
    permission: 'bench',
    arrays: ['ordered'],
    schema: orderSchema,
    work: ({ data, actor, now }) => orderParts({ ...data, userId: actor.id, now }),
    after: () => '/workshop/parts/order?saved=yes',
  });

/** Moves the day on which the bound order of the bound part should come. */
export const expectOrderAction: FormAction<[partId: string, orderId: string]> = async (
  partId,
  orderId,
  _before,
  formData,
) => {
  onlyPlain(partId, orderId);
  return onForm(formData, {
    permission: 'bench',
    schema: expectOrderSchema,
    work: ({ data, actor, now }) => expectOrder({ ...data, orderId, userId: actor.id, now }),
    after: () => `/workshop/parts/${partId}?saved=yes`,
  });
};

/** Ends the bound order of the bound part: nothing more of it comes. */
export const endOrderAction: FormAction<[partId: string, orderId: string]> = async (
  partId,
  orderId,
  _before,
  formData,
) => {
  onlyPlain(partId, orderId);
  return onForm(formData, {
    permission: 'bench',
    schema: endOrderSchema,
    work: ({ data, actor, now }) => endOrder({ ...data, orderId, userId: actor.id, now }),
    after: () => `/workshop/parts/${partId}?saved=yes`,
  });
};

/** Puts right what was typed of the bound lot. */
export const correctLotAction: FormAction<[lotId: string]> = async (lotId, _before, formData) => {
  onlyPlain(lotId);
  return onLot(lotId, formData, {
    schema: ({ currency }) => correctLotSchema(currency),
    work: (data, by) => correctLot(shownIn(lotId, formData), data, by),
  });
};

/** Adds pieces of the bound lot. */
export const addToLotAction: FormAction<[lotId: string]> = async (lotId, _before, formData) => {
  onlyPlain(lotId);
  return onLot(lotId, formData, {
    schema: ({ currency }) => moreOfLotSchema(currency),
    work: ({ order, ...data }, by) => addToLot({ ...data, ...by, lotId, orderId: order }),
  });
};

/** Takes pieces of the bound lot out of stock without a job. */
export const writeOffAction: FormAction<[lotId: string]> = async (lotId, _before, formData) => {
  onlyPlain(lotId);
  return onLot(lotId, formData, {
    schema: writeOffSchema,
    work: (data, by) => writeOffLot({ ...data, ...by, lotId }),
  });
};

/** What somebody at the bench does to a lot, kept in its history under their name; then the lot is shown. */
async function onLot<S extends z.ZodType>(
  lotId: string,
  formData: FormData,
  o: {
    schema: S | ((workshop: WorkshopCard) => S);
    work: (data: z.output<S>, by: { userId: string; now: Date }) => Promise<unknown>;
  },
): Promise<FormState> {
  return onForm(formData, {
    permission: 'bench',
    schema: o.schema,
    work: ({ data, actor, now }) => o.work(data, { userId: actor.id, now }),
    after: () => `/workshop/parts/lots/${lotId}?saved=yes`,
  });
}
