import { z } from 'zod';
import { readTerm } from '@/lib/catalogue/rules/term-parts';
import { HELD_RULES, START_EVENTS } from '@/lib/warranty/rules/terms';
import { line, lines, termCount, termUnit, wholeNumber, yesNo } from '../fields';

/** Whether a policy is taken out of the choice for repairs, or put back. */
export const retireSchema = z.object({ retire: yesNo });

/** A policy as the form gives it; whether its terms can be counted is for the rules to say. */
export const policySchema = z
  .object({
    name: line('Enter the name of the policy'),
    startEvent: z.enum(START_EVENTS, 'Choose what starts the cover'),
    workTerm: termCount,
    workTermUnit: termUnit,
    partsTerm: termCount,
    partsTermUnit: termUnit,
    renewedMinimum: termCount,
    renewedMinimumUnit: termUnit,
    heldRule: z.enum(HELD_RULES, 'Choose what becomes of the days here'),
    rollLastDay: yesNo,
    graceDays: wholeNumber(0, 60),
    transferable: yesNo,
    exclusions: lines(20),
  })
  .transform(({ name, workTermUnit, partsTermUnit, renewedMinimumUnit, ...terms }) => ({
    name,
    terms: {
      ...terms,
      workTerm: readTerm(terms.workTerm, workTermUnit),
      partsTerm: readTerm(terms.partsTerm, partsTermUnit),
      renewedMinimum: readTerm(terms.renewedMinimum, renewedMinimumUnit),
    },
  }));
