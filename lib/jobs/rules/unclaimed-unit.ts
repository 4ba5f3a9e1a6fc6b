import { type Day, dayInZone, maxDay } from '@/lib/calendar/day';
import { lastDecision, type UnitEvent } from './decision';
import { parseEvent } from './events';
import { type UnclaimedSettings, type UnclaimedStep, unclaimedStep } from './unclaimed';

/** What is known of one unit: its history in order, its letters the newest first, its notices the oldest first. */
export type UnclaimedUnit = {
  events: readonly UnitEvent[];
  mails: readonly { template: string; state: string; sentAt: Date | null; bouncedAt: Date | null }[];
  unclaimedNotices: readonly { at: Date }[];
};

/** The workshop's own days and its zone. */
export type UnclaimedHouse = {
  timeZone: string;
  unclaimedAfterDays: number;
  unclaimedEveryDays: number;
  unclaimedNotices: number;
};

export function unclaimedSettings(house: UnclaimedHouse): UnclaimedSettings {
  return {
    afterDays: house.unclaimedAfterDays,
    everyDays: house.unclaimedEveryDays,
    notices: house.unclaimedNotices,
  };
}

/**
 * What is due about one unit. Told is somebody whose newest letter that the unit is ready, that its parcel came back or that it is
 * here after all has left and was not returned; the time runs from the latest of that, the last time it became ready and the last time its
 * customer was heard: nobody is told that they were silent who wrote or paid the day before.
 */
export function stepOfUnit(unit: UnclaimedUnit, house: UnclaimedHouse, today: Day): UnclaimedStep {
  const dayOf = (at: Date) => dayInZone(at, house.timeZone);
  const ready = unit.events.findLast((event) => event.toStage === 'ready');
  const letter = newestTold(unit);
  return unclaimedStep(
    {
      toldOn:
        ready && letter?.sentAt ? latestDay([letter.sentAt, ready.at, heardAt(unit.events)], dayOf) : null,
      sentOn: unit.unclaimedNotices.map(({ at }) => dayOf(at)),
      keptUntil: lastDecision(unit.events)?.until ?? null,
    },
    unclaimedSettings(house),
    today,
  );
}

function latestDay(instants: readonly (Date | null)[], dayOf: (at: Date) => Day): Day | null {
  return instants
    .flatMap((at) => (at === null ? [] : [dayOf(at)]))
    .reduce<Day | null>((latest, on) => (latest === null ? on : maxDay(latest, on)), null);
}

/** When the customer last wrote or paid. */
function heardAt(events: readonly UnitEvent[]): Date | null {
  return events.findLast(isHeard)?.at ?? null;
}

function isHeard({ kind, data }: UnitEvent): boolean {
  if (kind !== 'message-sent' && kind !== 'payment-recorded') return false;
  const event = parseEvent(kind, data);
  return event.kind === 'message-sent'
    ? event.data.author === 'customer'
    : event.kind === 'payment-recorded' && event.data.amount > 0 && !event.data.isPostage;
}

/** What became of the newest notice's letter. */
export type NoticeMail = 'reached' | 'came-back' | 'not-left';

export function noticeMail({ mails }: Pick<UnclaimedUnit, 'mails'>): NoticeMail {
  const newest = mails.find((mail) => mail.template === 'unclaimed-notice');
  if (newest?.bouncedAt) return 'came-back';
  return newest?.state === 'sent' ? 'reached' : 'not-left';
}

/** The newest letter that the unit waits here, null unless it has left and was not returned. */
function newestTold({ mails }: Pick<UnclaimedUnit, 'mails'>) {
  const newest = mails.find((mail) => mail.template !== 'unclaimed-notice');
  return newest?.state === 'sent' && !newest.bouncedAt ? newest : null;
}
