/** Words by which a part counts as a cell: those are never to be posted once they are in doubt (ADR, special provision 376). */
const CELL =
  /\b(cells?|batter(y|ies)|accu(mulator)?s?|li-?(ion|po)|lipo|lithium|18650|21700|power ?pack)\b|\d\s?m?Ah\b/i;

export function isCell(part: string): boolean {
  return CELL.test(part);
}

/** What the letter says that takes one back, unless the owner writes it otherwise. Example: for a cell it allows charging again. */
export function liftText({ part }: { part: string }): string {
  const again = isCell(part)
    ? 'You can use, charge and post your unit again as before.'
    : 'You can use your unit again as before.';
  return [
    'We had written that we were no longer sure of it, and asked you to stop using your unit. That was a mistake of ours: the part in your unit is not the one we had in doubt.',
    `${again} You need not send it in. If you have sent it to us already, it comes back to you free of charge.`,
    'We are sorry for the worry and the trouble. If you had costs because of our letter, answer this message. Your rights by law and under the certificate stay as they are.',
  ].join('\n\n');
}

/**
 * What the letter about a lot says unless the owner writes it otherwise: cautious, and free of charge. A part that is a cell is not
 * to be used, charged or posted; any other is sent in. Example: { part: 'USB-C socket' } asks to stop using the unit and to answer.
 */
export function recallText({ part }: { part: string }): string {
  if (isCell(part)) {
    return [
      'We are no longer sure of a cell that we fitted in your unit. Please stop using it, and do not charge it any more, even if it seems to work well.',
      'Keep it switched off, cool and away from things that burn. If the case bulges, gets warm, smells or leaks, do not touch it further: bring it outside and call the fire brigade or your local collection point for batteries.',
      'Please do not post it. A cell in doubt must not travel as an ordinary parcel. Answer this message; we arrange with you how it is collected or handed in safely. The new cell, our work and the way there and back are free of charge for you.',
    ].join('\n\n');
  }
  return [
    'We are no longer sure of a part that we fitted in your unit. Please stop using it until we have looked at it, even if it seems to work well, and unplug it.',
    'Answer this message and we send you a label, so that the parcel costs you nothing. If the unit holds a lithium battery that bulges, gets warm or leaks, do not post it; tell us instead.',
    'The new part, our work and the way there and back are free of charge for you. Your rights by law and under the certificate stay as they are.',
  ].join('\n\n');
}
