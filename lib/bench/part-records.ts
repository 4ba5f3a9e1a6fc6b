import { compareDays, type Day, dayFromDate, maxDay } from '@/lib/calendar/day';
import { unitName } from '@/lib/catalogue/rules/unit-name';
import { db } from '@/lib/db/client';
import { newestFirst } from '@/lib/db/in-order';
import { markOf } from '@/lib/shown-row';
import { COVER_FACTS, readCoverEnds } from '@/lib/warranty/stored-cover-ends';
import { piecesOnOrder } from './rules/on-order';
import { isLow } from './rules/order-list';
import { readOpenOrders } from './stored-orders';
import { LOT_STOCK, piecesInStock } from './stored-stock';

export type PartRow = {
  id: string;
  code: string;
  name: string;
  term: string | null;
  reorderAt: number | null;
  inStock: number;
  /** pieces that were ordered and have not come */
  onOrder: number;
  lots: number;
  /** at its mark or below, even once those have come */
  isLow: boolean;
};

/** Every part with what is in stock over all lots, by name. */
export async function listParts(): Promise<PartRow[]> {
  const [rows, orders] = await Promise.all([
    db.part.findMany({ orderBy: { name: 'asc' }, include: { lots: { select: LOT_STOCK } } }),
    readOpenOrders(),
  ]);
  const ordered = piecesOnOrder(orders);
  return rows.map(({ lots, ...part }) => {
    const inStock = piecesInStock(lots);
    const onOrder = ordered.get(part.id) ?? 0;
    return {
      ...part,
      inStock,
      onOrder,
      lots: lots.length,
      isLow: isLow({ ...part, inStock: inStock + onOrder }),
    };
  });
}

/** What the form of a part shows of it, for its mark. */
export const PART_FIELDS = { code: true, name: true, term: true, reorderAt: true } as const;

/** What the form that corrects a lot shows of it, for its mark. */
export const LOT_FIELDS = { code: true, supplier: true, receivedOn: true, unitCostMinor: true } as const;

/** One part with its lots, the newest first, what is on order of it, and which jobs wait for it; null when there is none. */
export async function readPart(id: string) {
  const part = await db.part.findUnique({
    where: { id },
    include: {
      lots: {
        orderBy: [{ receivedOn: 'desc' }, { code: 'asc' }],
        include: { uses: { select: { quantity: true } }, recalls: LOT_STOCK.recalls },
      },
    },
  });
  if (!part) return null;
  const [orders, waiting] = await Promise.all([readOpenOrders([id]), jobsWaitingFor(id)]);
  const lots = part.lots.map(({ uses, receivedOn, ...lot }) => ({
    ...lot,
    receivedOn: dayFromDate(receivedOn),
    used: uses.reduce((sum, use) => sum + use.quantity, 0),
  }));
  return { ...part, lots, orders, waiting, inStock: piecesInStock(lots), mark: markOf(PART_FIELDS, part) };
}

/** Jobs that wait for a part now and need it still, who came first first. */
async function jobsWaitingFor(partId: string) {
  const rows = await db.awaitedPart.findMany({
    where: { partId, job: { stage: 'awaiting-parts', partsNotNeeded: { none: { partId } } } },
    orderBy: { job: { bookedAt: 'asc' } },
    select: {
      quantity: true,
      job: { select: { number: true, promisedOn: true, model: { select: { maker: true, name: true } } } },
    },
  });
  return rows.map(({ quantity, job: { number, promisedOn, model } }) => ({
    jobNumber: number,
    unit: unitName(model),
    quantity,
    promisedOn: promisedOn && dayFromDate(promisedOn),
  }));
}

/** A unit that a piece of a lot was fitted in. */
export type LotUnit = {
  jobNumber: string;
  stage: string;
  model: string;
  serial: string;
  quantity: number;
  usedAt: Date;
  /** when the piece was noted as out of the unit; null while it is in it */
  takenOutAt: Date | null;
  certificateNumber: string | null;
  /** Last day of cover on the fitted part with the days given back; null without a certificate. */
  coveredUntil: Day | null;
  hasLiveCover: boolean;
};

/** One lot, every unit it was fitted in, those under cover first, and open orders of its part; null when there is none. */
export async function readLot(id: string, today: Day) {
  const lot = await db.lot.findUnique({
    where: { id },
    include: {
      part: { select: { id: true, code: true, name: true } },
      events: { orderBy: newestFirst },
      uses: {
        orderBy: newestFirst,
        include: {
          job: {
            select: {
              number: true,
              stage: true,
              serialTyped: true,
              model: { select: { maker: true, name: true } },
              certificates: { select: { number: true } },
              claim: { select: { certificateNumber: true } },
            },
          },
        },
      },
    },
  });
  if (!lot) return null;
  const [ends, orders] = await Promise.all([endsByCertificate(id), readOpenOrders([lot.part.id])]);
  const { uses, receivedOn, ...rest } = lot;
  const mark = markOf(LOT_FIELDS, lot);
  const units = uses.map(({ job, quantity, at, takenOutAt }): LotUnit => {
    // A part fitted under a claim is covered by the certificate the claim stands on.
    const certificateNumber = job.certificates[0]?.number ?? job.claim?.certificateNumber ?? null;
    const coveredUntil = certificateNumber === null ? null : (ends.get(certificateNumber) ?? null);
    return {
      jobNumber: job.number,
      stage: job.stage,
      model: unitName(job.model),
      serial: job.serialTyped,
      quantity,
      usedAt: at,
      takenOutAt,
      certificateNumber,
      coveredUntil,
      hasLiveCover: coveredUntil !== null && compareDays(today, coveredUntil) <= 0,
    };
  });
  units.sort((a, b) => Number(b.hasLiveCover) - Number(a.hasLiveCover));
  return { ...rest, receivedOn: dayFromDate(receivedOn), units, orders, mark };
}

/** Per certificate in force, the last day of its lines that name the lot, with the days given back. */
async function endsByCertificate(lotId: string): Promise<Map<string, Day>> {
  const lines = await db.certificateLine.findMany({
    where: { lotId, certificate: { supersededAt: null } },
    select: { id: true, endsOn: true, certificate: { select: COVER_FACTS } },
  });
  const counted = await readCoverEnds(lines.map(({ certificate }) => certificate));
  const ends = new Map<string, Day>();
  for (const { id, endsOn, certificate } of lines) {
    const end = counted.get(certificate.id)?.lines.get(id) ?? dayFromDate(endsOn);
    ends.set(certificate.number, maxDay(end, ends.get(certificate.number) ?? end));
  }
  return ends;
}
