import type { Assessment } from './reasons';

/** Who of the workshop may open a claim on an answer: whoever takes parcels in, the owner with a reason, or nobody. */
export type DeskOpening = 'anyone' | 'owner' | 'nobody';

/**
 * Whether the workshop may open a claim in the customer's place, by telephone or with the unit on the table.
 *
 * A serial that is close needs no photo here: the unit is compared when it is taken in, and a person settles it. Cover that ended
 * beyond the days of grace is the owner's to look past, case by case. Another unit, a number of nobody, a symptom that no list has
 * and a claim that is open already leave nothing to look past.
 *
 * Example: 'lapsed' with the next step book-paid-repair is the owner's, with ask-a-person (in the days of grace) anyone's.
 */
export function deskOpening(assessment: Assessment): DeskOpening {
  switch (assessment.answer) {
    case 'covered-subject-to-inspection':
    case 'confirm-serial':
      return 'anyone';
    case 'lapsed':
      return ofLapsed(assessment);
    default:
      return 'nobody';
  }
}

function ofLapsed({ nextStep }: Assessment): DeskOpening {
  switch (nextStep?.kind) {
    case 'ask-a-person':
      return 'anyone';
    case 'book-paid-repair':
      return 'owner';
    default:
      return 'nobody';
  }
}
