import type { Assessment, Need, Reason } from './reasons';

export type BehindSerial = {
  assessment: Assessment;
  /** True when it may be opened only in the days of grace, so that a person decides on that too. */
  isLate: boolean;
};

/**
 * The answer to a serial that is close, with what would follow if a person confirms it: `asSame` is the answer to the same
 * question with the serial of the certificate.
 *
 * A photo of the serial opens no more than the right serial would. Where that would open a claim, the answer stays
 * 'confirm-serial' and names the cover it stands on; where it would not, the photo would be asked for in vain, so the
 * stronger ground is told at once, with its own next step.
 * Example: a close serial on cover that ended beyond the grace is 'lapsed', reasons serial-close and line-ended, next step
 * book-paid-repair. Refuses a pair that is not such a pair.
 */
export function behindSerial(close: Assessment, asSame: Assessment): BehindSerial {
  if (close.answer !== 'confirm-serial') throw new RangeError(`Not a close serial: ${close.answer}`);
  if (asSame.answer === 'confirm-serial') throw new RangeError('The second answer is for the same serial');
  const behind = asSame.reasons.filter((reason) => reason.code !== 'serial-same');
  const reasons: Reason[] = [...close.reasons, ...behind];
  const step = asSame.nextStep?.kind;
  if (step !== 'open-claim' && step !== 'ask-a-person')
    return { assessment: { ...asSame, reasons }, isLate: false };
  return {
    assessment: { ...close, reasons, needs: once([...close.needs, ...asSame.needs]) },
    isLate: step === 'ask-a-person',
  };
}

function once(needs: readonly Need[]): Need[] {
  return [...new Set(needs)];
}
