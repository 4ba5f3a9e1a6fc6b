export type AskedRevision = {
  state: string;
  grossMinor: number;
  decidedAt: Date | null;
  lines: readonly { kind: string }[];
};

export type AnswerToOffer = {
  answer: 'waiting' | 'accepted' | 'declined';
  /** with tax, minor units */
  gross: number;
};

/**
 * What became of the prices that were offered on a job after an instant, such as its ruling; null when none was. One that
 * waits is the newest; else a yes stands, whenever it was given and whatever was declined after it; else the last no. The
 * booked price and the return fee were never offered.
 */
export function answerToOffer(revisions: readonly AskedRevision[], since: Date): AnswerToOffer | null {
  const [, ...later] = revisions;
  const asked = later.filter(
    ({ state, decidedAt, lines }) =>
      state === 'sent' ||
      (decidedAt !== null &&
        (state === 'accepted' || decidedAt >= since) &&
        lines.every(({ kind }) => kind !== 'return-fee')),
  );
  const last = (state: string) => asked.findLast((revision) => revision.state === state);
  const waiting = last('sent');
  if (waiting) return { answer: 'waiting', gross: waiting.grossMinor };
  const accepted = last('accepted');
  if (accepted) return { answer: 'accepted', gross: accepted.grossMinor };
  const declined = last('declined');
  return declined ? { answer: 'declined', gross: declined.grossMinor } : null;
}
