import { isInspectionFee } from './after-no';

type Dated = { at: Date };
type Moved = Dated & { fromStage: string | null; toStage: string | null };

/**
 * What was done at the customer's express wish for an early start: the minutes of the repair, and whether the inspection is
 * finished. What was done before the wish does not count (Directive 2011/83/EU Art. 14(4)(a); SI 2013/3134 reg. 36(6)(b)).
 *
 * Where an inspection has a price of its own it is a service of its own, so that the minutes before the bench are the
 * inspection's and not the repair's. It is finished with its first finding, or when the unit goes on from it. Events in
 * their order.
 *
 * An inspection for 18.00 with 15 minutes and a finding, and no bench yet -> { minutes: 0, isInspected: true }
 */
export function workUnderRequest(o: {
  requestedAt: Date | null;
  agreed: readonly { kind: string; amount: number }[];
  events: readonly Moved[];
  findings: readonly Dated[];
  work: readonly (Dated & { minutes: number })[];
}): { minutes: number; isInspected: boolean } {
  const { requestedAt } = o;
  if (requestedAt === null) return { minutes: 0, isInspected: false };
  const hasFee = o.agreed.some(isInspectionFee);
  const first = (is: (event: Moved) => boolean) => o.events.find(is)?.at ?? null;
  const inspectedFrom = first(({ toStage }) => toStage === 'assessing');
  const benchFrom = first(({ toStage }) => toStage === 'on-bench');
  const since = (at: Date, from: Date | null) => from !== null && at >= from && at >= requestedAt;
  const goesOn = o.events.some(
    ({ at, fromStage, toStage }) =>
      fromStage === 'assessing' && toStage !== null && toStage !== 'assessing' && at >= requestedAt,
  );
  return {
    minutes: o.work
      .filter(({ at }) => (hasFee ? since(at, benchFrom) : at >= requestedAt))
      .reduce((sum, { minutes }) => sum + minutes, 0),
    isInspected: hasFee && (goesOn || o.findings.some(({ at }) => since(at, inspectedFrom))),
  };
}
