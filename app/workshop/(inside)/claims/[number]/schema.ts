import { z } from 'zod';
import { countedField } from '@/app/ui/forms/counted-field';
import { neededText, optionalText } from '@/lib/jobs/rules/typed-text';
import { CAUSES } from '@/lib/warranty/rules/causes';
import { INSPECTION_ITEMS } from '@/lib/warranty/rules/inspection';

/** What every form of the claims desk carries: the version of the job that the person saw. */
export const carriedForm = z.object({ version: countedField });

export const ITEM_KEYS = INSPECTION_ITEMS.map((item) => item.key);

export const inspectionForm = z.object({
  item: z.enum(ITEM_KEYS),
  answer: z.enum(['yes', 'no', 'unclear'], { error: 'Choose yes, no or unclear' }),
  note: optionalText(1000),
});

/** A choice of the ruling form that stands for "nothing besides". */
export const NOTHING_ELSE = 'nothing';

export const rulingForm = z.object({
  cause: z.enum(CAUSES, { error: 'Choose the cause' }),
  alsoFound: z
    .enum([NOTHING_ELSE, 'separate-fault', 'damage-after-return'], {
      error: 'Choose whether something else was found',
    })
    .transform((found) => (found === NOTHING_ELSE ? null : found)),
  evidence: z
    .enum(['clear', 'unclear'], { error: 'Choose whether the evidence is clear' })
    .transform((answer) => answer === 'clear'),
  letIn: z
    .enum(['yes', 'no'], { error: 'Choose whether the late claim is let in' })
    .optional()
    .transform((answer) => (answer === undefined ? null : answer === 'yes')),
  /** the customer may be told at once; asked for where the ruling is final */
  mayTell: z
    .literal('yes')
    .optional()
    .transform((ticked) => ticked === 'yes'),
  reasonText: optionalText(4000),
  lesson: optionalText(1000),
});

/** Keys of the certificate's lines that were done again; none where a part alone was fitted. */
export const renewalForm = z.object({ lines: z.array(z.string().max(40)).max(200) });

/** Why a ruling that was told is looked at again: its customer reads it. */
export const lookAgainForm = z.object({ reason: neededText('why, in words for the customer', 1000) });

export const secondLookForm = z.object({
  decision: z.enum(['confirm', 'undo'], { error: 'Confirm the ruling, or send it back' }),
});
