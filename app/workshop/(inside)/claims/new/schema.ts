import { z } from 'zod';
import { customerAnswers } from '@/lib/jobs/rules/address';
import { DATA_NOT_ASKED, parcelAnswers } from '@/lib/jobs/rules/booking';
import { isOther } from '@/lib/warranty/rules/standing';
import { extraField, serialField } from '../../arrivals/parcel-fields';

export const deskClaimForm = z
  .object({
    serial: serialField,
    symptom: z
      .string({ error: 'Choose what it does, or “Something else”' })
      .max(200, 'Choose one of the answers'),
    details: z.string().trim().max(2000, 'Keep this to 2,000 characters').optional().default(''),
    where: z.enum(['here', 'posted'], 'Choose whether the unit is here'),
    extra: extraField,
    battery: z.string({ error: 'Choose the answer that fits the battery' }).max(40),
    data: z.enum([...parcelAnswers.shape.data.options, DATA_NOT_ASKED], {
      error: 'Choose what the customer said of their recordings and settings, or that nobody asked',
    }),
    reason: z.string().trim().max(500, 'Keep this to 500 characters').optional().default(''),
    ...customerAnswers.shape,
  })
  .refine(({ symptom, details }) => !isOther(symptom) || details !== '', {
    path: ['details'],
    message: 'Write in a few words what it does',
  });
