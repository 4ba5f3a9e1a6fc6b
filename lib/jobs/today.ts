import { plannedMinutes } from '@/lib/bench/rules/job-sheets';
import { minutesOf } from '@/lib/bench/rules/minutes-by';
import { type Day, dayFromDate, dayInZone } from '@/lib/calendar/day';
import { unitName } from '@/lib/catalogue/rules/unit-name';
import { db } from '@/lib/db/client';
import type { Prisma } from '@/lib/db/generated/client';
import { balanceOf } from '@/lib/invoices/rules/balance';
import { countMailToLookAt } from '@/lib/mail/records';
import { type ListedRequest, listRequests } from '@/lib/quotes/records';
import { offerOf } from '@/lib/quotes/rules/agreed';
import { claimStanding } from '@/lib/warranty/rules/claim-standing';
import { COVER_FACTS, type CoverEnds, recentCoverEnds } from '@/lib/warranty/stored-cover-ends';
import { toldRuling } from '@/lib/warranty/stored-ruling';
import { readCalendar, readWorkshop, type WorkshopCard } from '@/lib/workshop/records';
import { byComing, EXPECTED, type ExpectedParcel, inOrderOfComing } from './find-arrival';
import { isLongSentBack, isWrittenAbout, WRITTEN_SINCE } from './long-sent-back';
import { COUNTS, readKind, readStage, standingPromise } from './records';
import { type AnswerClock, type AnswerDue, answerDue } from './rules/answer-due';
import { type AwaitedPart, partsWait } from './rules/awaited-parts';
import { type BenchLoad, benchLoad } from './rules/bench-load';
import { isOwedWaived } from './rules/decision';
import { isBackWithUs, waitsForAddress } from './rules/handover';
import { WITH_US } from './rules/stage-sets';
import { minutesLeft, type TodayJob, type TodayLists, todayLists } from './rules/today';
import { LISTED_STATES, type QuoteLists, quoteLists, type TodayQuote } from './rules/today-quotes';
import { stepOfUnit } from './rules/unclaimed-unit';
import { SOUGHT, type SoughtParcel, soughtParcels } from './sought-parcels';
import { AWAITED_PARTS, awaitedPartsOf } from './stored-awaited-parts';
import { UNCLAIMED_FACTS } from './stored-unclaimed';
import { readUnanswered, type Unanswered } from './unanswered';

export type TodayListed = TodayJob & {
  unit: string;
  repair: string;
  customer: string;
  readyOn: Day | null;
  /** the day its carrier brought it back, where it has not left since */
  cameBackOn: Day | null;
  /** set where its customer has written since and nobody has closed it; its promise is past then */
  sentBackOn: Day | null;
  /** end of the certificate a claim stands on, with the days given back */
  certificateEndsOn: Day | null;
  isLateClaim: boolean;
  /** while it waits for parts */
  awaitedParts: AwaitedPart[];
};

export type TodayAsked = TodayQuote & {
  device: string;
  customer: string;
  photos: number;
  /** the price that waits or was agreed, with tax, minor units */
  gross: number | null;
};

export type Today = {
  today: Day;
  lists: TodayLists<TodayListed>;
  quotes: QuoteLists<TodayAsked>;
  unanswered: (Unanswered & { answer: AnswerDue })[];
  expected: ExpectedParcel[];
  /** booked so long ago, and without a parcel, that they count as not coming */
  notCome: ExpectedParcel[];
  sought: SoughtParcel[];
  mail: { failed: number; bounced: number; kept: number };
  load: BenchLoad;
};

const SHOWN = {
  ...EXPECTED,
  ...UNCLAIMED_FACTS,
  ...WRITTEN_SINCE,
  ...SOUGHT,
  number: true,
  kind: true,
  promisedOn: true,
  withdrawnAt: true,
  bookedAt: true,
  arrivedAt: true,
  readyAt: true,
  isSerialSettled: true,
  model: { select: { maker: true, name: true } },
  repair: { select: { name: true, minutes: true } },
  besides: { select: { sheet: { select: { repair: { select: { minutes: true } } } } } },
  customer: { select: { name: true } },
  work: { where: COUNTS, select: { minutes: true } },
  awaitedParts: AWAITED_PARTS,
  payments: { select: { amountMinor: true, purpose: true } },
  invoices: { select: { kind: true, payableMinor: true } },
  quotes: {
    select: {
      revisions: {
        where: { state: { in: ['sent', 'accepted'] } },
        select: { state: true, revision: true, grossMinor: true, validUntil: true },
      },
    },
  },
  claim: {
    select: {
      number: true,
      state: true,
      cause: true,
      ruling: true,
      secondLookAt: true,
      contestedAt: true,
      reopenedAt: true,
      isLate: true,
      certificate: { select: COVER_FACTS },
    },
  },
} satisfies Prisma.JobSelect;

/** Working days of bench load that are shown. */
const LOAD_DAYS = 10;

/** Everything that needs a hand today; `given` is the workshop where whoever asks has read it. */
export async function readToday(now: Date, given?: WorkshopCard): Promise<Today> {
  const workshop = given ?? (await readWorkshop());
  const { timeZone } = workshop;
  const today = dayInZone(now, timeZone);
  const [found, requests, calendar, unanswered, mail] = await Promise.all([
    db.job.findMany({
      // What was sent back long ago and is not closed has been written about, but for what the clock closes next.
      where: {
        OR: [{ stage: { in: ['booked', ...WITH_US] } }, isLongSentBack(now), { soughtSince: { not: null } }],
      },
      orderBy: [{ bookedAt: 'asc' }, { id: 'asc' }],
      select: SHOWN,
    }),
    listRequests({ states: LISTED_STATES }),
    readCalendar(workshop, today),
    readUnanswered(),
    countMailToLookAt(),
  ]);
  const open = found.filter(
    (row) => row.soughtSince === null && (row.stage !== 'sent-back' || isWrittenAbout(row)),
  );
  const ends = await recentCoverEnds(
    open.flatMap(({ claim }) => claim?.certificate ?? []),
    now,
  );
  const jobs = open
    .filter(({ stage }) => stage !== 'booked')
    .map((row) => listed(row, { workshop, today, ends }));
  const booked = open.filter(({ stage }) => stage === 'booked');
  const parcels = byComing(inOrderOfComing(booked, workshop, now));
  const clock: AnswerClock = { today, answerDays: workshop.answerDays, calendar };
  return {
    today,
    lists: todayLists(jobs, clock),
    quotes: quoteLists(
      requests.map((request) => asked(request, timeZone)),
      { ...clock, remindDays: workshop.remindDays },
    ),
    unanswered: unanswered.map((each) => ({
      ...each,
      answer: answerDue(dayInZone(each.at, timeZone), clock),
    })),
    expected: parcels.coming,
    notCome: parcels.notCome,
    sought: soughtParcels(found, { timeZone, today }),
    mail,
    load: benchLoad(
      jobs.map((job) => ({ promisedOn: job.promisedOn, minutes: minutesLeft(job) })),
      { today, days: LOAD_DAYS, capacityMinutesDay: workshop.capacityMinutesDay, calendar },
    ),
  };
}

function listed(
  row: Prisma.JobGetPayload<{ select: typeof SHOWN }>,
  o: { workshop: WorkshopCard; today: Day; ends: ReadonlyMap<string, CoverEnds> },
): TodayListed {
  const { workshop, today } = o;
  const { timeZone } = workshop;
  const isWaived = isOwedWaived(row.events);
  const offer = offerOf(row);
  const back = isBackWithUs(row.events) ? row.events.findLast(({ kind }) => kind === 'came-back') : undefined;
  const awaitedParts = awaitedPartsOf(row);
  return {
    number: row.number,
    kind: readKind(row.kind),
    stage: readStage(row.stage),
    promisedOn: row.sentBackAt ? null : standingPromise(row),
    arrivedOn: dayInZone(row.arrivedAt ?? row.bookedAt, timeZone),
    readyOn: row.readyAt ? dayInZone(row.readyAt, timeZone) : null,
    sentBackOn: row.sentBackAt ? dayInZone(row.sentBackAt, timeZone) : null,
    cameBackOn: back ? dayInZone(back.at, timeZone) : null,
    waitsForAddress: waitsForAddress(row.events),
    isWrittenAbout: row.sentBackAt !== null,
    minutesPlanned: plannedMinutes(row),
    minutesWorked: minutesOf(row.work),
    isSerialSettled: row.isSerialSettled,
    owed: isWaived ? 0 : balanceOf(row).owed,
    awaitedParts,
    isPartHere: partsWait(awaitedParts, today)?.isAllHere ?? false,
    isToBeDecided: row.stage === 'unclaimed' && stepOfUnit(row, workshop, today).step === 'decide',
    offerUntil: offer ? dayFromDate(offer.validUntil) : null,
    claim: row.claim && {
      number: row.claim.number,
      standing: claimStanding({ ...row.claim, job: row }),
      ruling: toldRuling(row.claim),
      contestedOn: row.claim.contestedAt && dayInZone(row.claim.contestedAt, timeZone),
      reopenedOn: row.claim.reopenedAt && dayInZone(row.claim.reopenedAt, timeZone),
    },
    unit: unitName(row.model),
    repair: row.repair.name,
    customer: row.customer.name,
    certificateEndsOn: row.claim ? (o.ends.get(row.claim.certificate.id)?.end ?? null) : null,
    isLateClaim: row.claim?.isLate ?? false,
  };
}

function asked(request: ListedRequest, timeZone: string): TodayAsked {
  return {
    number: request.number,
    state: request.state,
    waitsSince: dayInZone(request.changedAt, timeZone),
    heldUntil: request.newest ? dayFromDate(request.newest.validUntil) : null,
    device: request.device,
    customer: request.name,
    photos: request.photos,
    gross: request.newest?.grossMinor ?? null,
  };
}
