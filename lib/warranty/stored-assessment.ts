import { z } from 'zod';
import { type Day, isDay } from '@/lib/calendar/day';
import { ANSWERS, type Assessment, NEEDS } from './rules/reasons';

const day = z.custom<Day>((value) => typeof value === 'string' && isDay(value));
const line = { lineId: z.string(), description: z.string() };

const reason = z.discriminatedUnion('code', [
  z.object({ code: z.literal('number-unknown') }),
  z.object({ code: z.literal('signature-fails'), number: z.string() }),
  z.object({ code: z.literal('serial-same'), serial: z.string() }),
  z.object({ code: z.literal('serial-differs'), serial: z.string() }),
  z.object({ code: z.literal('serial-close'), serial: z.string() }),
  z.object({
    code: z.literal('superseded'),
    asked: z.number().int(),
    assessed: z.number().int(),
    replacedOn: day,
  }),
  z.object({ code: z.literal('line-ended'), ...line, endedOn: day, lastClaimDay: day }),
  z.object({ code: z.literal('in-grace'), ...line, endedOn: day, graceUntil: day }),
  z.object({ code: z.literal('last-day-moved'), ...line, endedOn: day, lastClaimDay: day }),
  z.object({ code: z.literal('line-covers'), ...line, endsOn: day }),
  z.object({ code: z.literal('symptom-outside'), symptom: z.string() }),
  z.object({ code: z.literal('symptom-unlisted') }),
  z.object({ code: z.literal('first-customer-only') }),
  z.object({ code: z.literal('open-claim'), claimNumber: z.string(), openedOn: day }),
  z.object({ code: z.literal('rights-by-law') }),
]);

const nextStep = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('check-serial') }),
  z.object({ kind: z.literal('send-serial-photo') }),
  z.object({ kind: z.literal('ask-a-person'), until: day }),
  z.object({ kind: z.literal('book-paid-repair') }),
  z.object({ kind: z.literal('see-open-claim'), claimNumber: z.string() }),
  z.object({ kind: z.literal('open-claim'), until: day }),
]);

const assessment = z.object({
  answer: z.enum(ANSWERS),
  reasons: z.array(reason),
  needs: z.array(z.enum(NEEDS)),
  nextStep: nextStep.nullable(),
});

/** The preliminary answer as it was given and kept with the claim; throws where a row does not fit. */
export function readAssessment(stored: unknown): Assessment {
  return assessment.parse(stored);
}
