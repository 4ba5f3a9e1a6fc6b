import { isEventKind, parseEvent } from './events';
import { withoutUndone } from './undone';

/** How a unit leaves: a carrier takes it, or its customer collects it here. */
export type Handover = { by: 'carrier'; carrier: string; carrierReference: string } | { by: 'collected' };

/** Whether everything is said of a handover that has to be: of a carrier its name and its reference. */
export function isHandoverNamed(handover: Handover): boolean {
  return handover.by === 'collected' || (handover.carrier !== '' && handover.carrierReference !== '');
}

type Happened = { kind: string; data: unknown };

/** Whether a unit that left was collected in person, by the last time it left; false while it never did. */
export function isCollected(events: readonly Happened[]): boolean {
  const last = events.findLast(({ kind }) => kind === 'sent-back');
  const left = last && parseEvent('sent-back', last.data);
  return left?.kind === 'sent-back' && left.data.isCollected === true;
}

/** Whether a job counts as delivered because time passed, and not because somebody said so. */
export function isClosedByTime(events: readonly { toStage: string | null; actorKind: string }[]): boolean {
  const last = events.findLast(({ toStage }) => toStage !== null);
  return last?.toStage === 'closed' && last.actorKind === 'clock';
}

/**
 * Whether a unit left once, wherever it is by now, so that what was issued then stands. A dispatch that was recorded by mistake counts
 * where it issued a certificate; without one the unit is here as it was before, and everything that was open to it is.
 */
export function hasLeft(events: readonly Happened[]): boolean {
  return wasAway(events) || events.some(hasIssued);
}

function hasIssued({ kind, data }: Happened): boolean {
  if (kind !== 'sent-back') return false;
  const left = parseEvent(kind, data);
  return left.kind === 'sent-back' && left.data.certificate !== null;
}

/** Whether a unit was really gone once: not where it was recorded by mistake alone. */
export function wasAway(events: readonly { kind: string }[]): boolean {
  return withoutUndone(events).some(({ kind }) => kind === 'sent-back');
}

/** Whether a unit is here because it never left the last time it was recorded as gone. */
export function isNotGone(events: readonly { kind: string }[]): boolean {
  const last = events.findLast(({ kind }) => kind === 'sent-back' || kind === 'dispatch-undone');
  return last?.kind === 'dispatch-undone';
}

/** Whether a unit is here because its carrier brought the parcel back, and it has not left again. */
export function isBackWithUs(events: readonly { kind: string }[]): boolean {
  const last = withoutUndone(events).findLast(({ kind }) => kind === 'sent-back' || kind === 'came-back');
  return last?.kind === 'came-back';
}

/**
 * Whether a unit that came back waits for its customer: asked for the address, they have neither written, nor had their contact
 * put right, nor been heard by whoever took the unit up again; and the owner has not decided to send it all the same.
 */
export function waitsForAddress(events: readonly Happened[]): boolean {
  if (!isBackWithUs(events)) return false;
  const since = events.findLastIndex(({ kind }) => kind === 'came-back');
  return !events.slice(since + 1).some(isAnswer);
}

function isAnswer({ kind, data }: Happened): boolean {
  if (!isEventKind(kind)) return false;
  const event = parseEvent(kind, data);
  if (event.kind === 'message-sent') return event.data.author === 'customer';
  if (event.kind === 'moved') return event.data.move === 'take-up-again';
  if (event.kind === 'unclaimed-decided') return event.data.decision === 'send-back-unpaid';
  return event.kind === 'contact-corrected';
}

/**
 * Whether a job was opened by staff for a unit that lay before them, so that no booking waits for another: for a parcel that came
 * without one, or for a claim told at the desk, which is written with the arrival of its unit in one transaction.
 */
export function isWalkIn(events: readonly (Happened & { at: Date; actorKind: string })[]): boolean {
  const first = events.find(({ kind }) => kind === 'booked');
  const booked = first && parseEvent('booked', first.data);
  if (booked?.kind !== 'booked') return false;
  const arrived = events.find(({ kind }) => kind === 'unit-arrived');
  const isTakenInAtOnce = arrived !== undefined && arrived.at.getTime() === first?.at.getTime();
  return booked.data.isWalkIn === true || (first?.actorKind !== 'customer' && isTakenInAtOnce);
}
