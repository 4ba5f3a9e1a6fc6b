import { z } from 'zod';
import { customerAnswers } from '@/lib/jobs/rules/address';
import { DATA_NOT_ASKED, parcelAnswers } from '@/lib/jobs/rules/booking';
import { optionalText } from '@/lib/jobs/rules/typed-text';
import { isOther } from '@/lib/warranty/rules/standing';
import { extraField, serialField } from '../../arrivals/parcel-fields';

export const deskClaimForm = z
  .object({
    serial: serialField,
    symptom: z
      .string({ error: 'Choose what it does, or “Something else”' })
      .max(200, 'Choose one of the answers'),
    details: optionalText(2000),
    where: z.enum(['here', 'posted'], 'Choose whether the unit is here'),
    extra: extraField,
    battery: z.string({ error: 'Choose the answer that fits the battery' }).max(40),
    data: z.enum([...parcelAnswers.shape.data.options, DATA_NOT_ASKED], {
      error: 'Choose what the customer said of their recordings and settings, or that nobody asked',
    }),
    reason: optionalText(500),
    ...customerAnswers.shape,
  })
  .refine(({ symptom, details }) => !isOther(symptom) || details !== '', {
    path: ['details'],
    message: 'Write in a few words what it does',
  });
