import { stringify } from 'csv-stringify/sync';
import { dayInZone } from '@/lib/calendar/day';
import { guardText } from '@/lib/catalogue/rules/list-cells';
import { db } from '@/lib/db/client';
import { parcelWait } from '@/lib/jobs/rules/parcel-wait';
import { PARTS_TO_COME } from '@/lib/jobs/rules/stage-sets';
import { openOf, TAKEN } from '@/lib/jobs/stored-awaited-parts';
import { AWAITED, awaitedParcel } from '@/lib/jobs/stored-parcel-wait';
import { readWorkshop } from '@/lib/workshop/records';
import { piecesOnOrder } from './rules/on-order';
import { orderList, stillNeeded, usualPieces } from './rules/order-list';
import { readOpenOrders } from './stored-orders';
import { LOT_STOCK, piecesInStock } from './stored-stock';

const USUAL = { select: { usualParts: { select: { partId: true, quantity: true } } } } as const;

/** What to order, with who delivered each part last, and what is on order. A booking whose parcel does not come needs no parts. */
export async function readOrderList(now: Date) {
  const [workshop, parts, open, orders] = await Promise.all([
    readWorkshop(),
    db.part.findMany({
      orderBy: { name: 'asc' },
      select: {
        id: true,
        code: true,
        name: true,
        reorderAt: true,
        lots: {
          orderBy: { receivedOn: 'desc' },
          select: { ...LOT_STOCK, supplier: true, unitCostMinor: true },
        },
      },
    }),
    db.job.findMany({
      // Of a claim nobody knows what it takes before somebody says that it waits for a part.
      where: { stage: { in: [...PARTS_TO_COME] }, OR: [{ kind: 'repair' }, { awaitedParts: { some: {} } }] },
      select: {
        kind: true,
        stage: true,
        awaitedParts: { where: { partId: { not: null } }, select: { partId: true, quantity: true } },
        ...AWAITED,
        repair: USUAL,
        besides: { select: { sheet: { select: { repair: USUAL } } } },
        ...TAKEN,
      },
    }),
    readOpenOrders(),
  ]);
  const today = dayInZone(now, workshop.timeZone);
  const jobs = open.filter(
    (job) =>
      job.stage !== 'booked' || !parcelWait(awaitedParcel(job, workshop.timeZone), workshop, today).isOver,
  );
  const needed = stillNeeded(
    jobs.map(({ kind, awaitedParts, ...job }) => ({
      usual: kind === 'repair' ? usualPieces(job) : [],
      awaited: awaitedParts.flatMap((each) =>
        each.partId === null ? [] : [{ partId: each.partId, quantity: openOf(each, job) }],
      ),
      taken: job.partUses.map(({ quantity, lot }) => ({ partId: lot.partId, quantity })),
      notNeeded: job.partsNotNeeded.map(({ partId }) => partId),
    })),
  );
  const stock = parts.map(({ lots, ...part }) => ({
    ...part,
    inStock: piecesInStock(lots),
    supplier: lots[0]?.supplier ?? '',
    unitCostMinor: lots[0]?.unitCostMinor ?? null,
  }));
  return { rows: orderList(stock, needed, piecesOnOrder(orders)), jobs: jobs.length, orders, today };
}

type Row = Awaited<ReturnType<typeof readOrderList>>['rows'][number];

/** The order list as the text of a CSV file (RFC 4180, UTF-8 with a byte order mark); no cell begins like a formula. */
export function orderCsv(rows: readonly Row[]): string {
  const heads = [
    'Code',
    'Part',
    'Order at least',
    'In stock',
    'On order',
    'Needed by open jobs',
    'Order again at',
    'Last from',
  ];
  const lines = rows.map((row) => [
    guardText(row.code),
    guardText(row.name),
    row.order,
    row.inStock,
    row.onOrder,
    row.needed,
    row.reorderAt ?? '',
    guardText(row.supplier),
  ]);
  return stringify([heads, ...lines], { bom: true, record_delimiter: 'windows' });
}
