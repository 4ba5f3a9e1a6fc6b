import { orderParts } from '@/lib/bench/order-parts';
import { recordCheck } from '@/lib/bench/record-check';
import { recordWire, type WireInput } from '@/lib/bench/record-wire';
import type { GivenEntry } from '@/lib/bench/rules/checks';
import { usePartOnJob as takePart } from '@/lib/bench/use-part-on-job';
import { compareDays, daysBetween } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { balanceOf } from '@/lib/invoices/rules/balance';
import type { Actor } from '@/lib/jobs/actor';
import { addPhotos } from '@/lib/jobs/add-photo';
import { arrive } from '@/lib/jobs/arrive';
import { describePhoto } from '@/lib/jobs/describe-photo';
import { moveJob, type PlainMove } from '@/lib/jobs/move';
import { recordFinding } from '@/lib/jobs/record-finding';
import { recordPayment } from '@/lib/jobs/record-payment';
import { recordWork } from '@/lib/jobs/record-work';
import { closesOn } from '@/lib/jobs/rules/closing';
import type { PhotoMark } from '@/lib/jobs/rules/photo-marks';
import { sendMessage } from '@/lib/jobs/send-message';
import { settleMessage } from '@/lib/jobs/settle-message';
import { waitForParts } from '@/lib/jobs/wait-for-parts';
import type { NewPhoto, PhotoPurpose } from '@/lib/jobs/write-photos';
import { showNumber } from '@/lib/numbers/job-number';
import { readCarrierRows } from '@/lib/parcels/records';
import { transitTo } from '@/lib/parcels/rules/carriers';
import { decideOffer } from '@/lib/quotes/decide-offer';
import type { LineKind } from '@/lib/quotes/rules/lines';
import { writeOffer } from '@/lib/quotes/write-offer';
import { dispatch } from '@/lib/warranty/dispatch';
import { carrierFor } from './carriers';
import { pick } from './chance';
import type { CustomerKey } from './customers';
import { dayOfInstant, minutesLater } from './days';
import { demoId } from './demo-id';
import { type Shot, takePhoto } from './photos';
import { passingEntry } from './readings';
import type { Shop } from './shop';
import type { HandName } from './staff';
import { Steps } from './steps';

export type OfferLine = readonly [kind: LineKind, description: string, amountMinor: number];

/**
 * One job on its way through the workshop, told step by step. Every step is a use case of the program; the course only
 * asks for the version each step names.
 */
export class Course extends Steps {
  constructor(
    shop: Shop,
    key: string,
    readonly jobId: string,
    readonly customer: CustomerKey,
    bookedAt: Date,
  ) {
    super(shop, key, bookedAt);
  }

  async version(): Promise<number> {
    const { version } = await db.job.findUniqueOrThrow({
      where: { id: this.jobId },
      select: { version: true },
    });
    return version;
  }

  async arrive(
    o: { serial?: string; missing?: string[]; extra?: string[]; photos?: Shot[] } = {},
  ): Promise<void> {
    const job = await db.job.findUniqueOrThrow({
      where: { id: this.jobId },
      select: { version: true, serialTyped: true, accessories: { select: { name: true } } },
    });
    await arrive({
      jobId: this.jobId,
      version: job.version,
      serial: o.serial ?? job.serialTyped,
      arrived: job.accessories.map((each) => each.name).filter((name) => !o.missing?.includes(name)),
      extra: o.extra ?? [],
      photos: await this.photos('arrival', o.photos ?? []),
      actor: this.shop.hands.front,
      now: this.step(),
    });
  }

  async move(
    move: PlainMove,
    o: { by?: HandName | 'customer' | 'clock'; note?: string } = {},
  ): Promise<void> {
    const by = o.by ?? 'bench';
    const actor: Actor = by === 'customer' || by === 'clock' ? { kind: by } : this.shop.hands[by];
    await moveJob({
      jobId: this.jobId,
      version: await this.version(),
      move,
      note: o.note ?? '',
      actor,
      now: this.step(),
    });
  }

  /** Orders one piece of a part, and lets the job wait until it comes. */
  async orderAndWait(code: string, o: { from: string; workingDays: number }): Promise<void> {
    const { hands, days } = this.shop;
    const partId = demoId('part', code);
    const orderedOn = dayOfInstant(this.at);
    await orderParts({
      pieces: [{ partId, quantity: 1 }],
      supplier: o.from,
      orderedOn,
      expectedOn: days.workedAfter(orderedOn, o.workingDays),
      formKey: demoId('order', this.key),
      userId: hands.bench.id,
      now: this.step(),
    });
    await waitForParts({
      jobId: this.jobId,
      version: await this.version(),
      parts: [{ partId, quantity: 1 }],
      expectedOn: null,
      actor: hands.bench,
      now: this.step(),
    });
  }

  async find(text: string, shots: Shot[] = [], by: HandName = 'bench'): Promise<void> {
    const photos = await this.photos(`finding-${this.at.getTime()}`, shots);
    await recordFinding({ jobId: this.jobId, text, photos, actor: this.shop.hands[by], now: this.step(14) });
  }

  /** Writes a changed price and asks for it. Amounts are with tax, as the workshop keeps its prices. */
  async askApproval(o: { lines: OfferLine[]; reason: string; onYes: string; onNo: string }): Promise<void> {
    await writeOffer({
      jobId: this.jobId,
      version: await this.version(),
      lines: o.lines.map(([kind, description, amount]) => ({
        kind,
        description,
        amount,
        category: 'S',
        rateBps: 2000,
      })),
      reason: o.reason,
      onYes: o.onYes,
      onNo: o.onNo,
      actor: this.shop.hands.owner,
      now: this.step(),
    });
    await this.move('ask-approval', { by: 'owner' });
  }

  async decide(decision: 'accepted' | 'declined', o: { isStartAsked?: boolean } = {}): Promise<void> {
    const offer = await db.quoteRevision.findFirstOrThrow({
      where: { quote: { jobId: this.jobId }, state: 'sent' },
      select: { revision: true },
    });
    await decideOffer({
      jobId: this.jobId,
      revision: offer.revision,
      decision,
      isTermsAccepted: true,
      ...o,
      actor: { kind: 'customer' },
      now: this.step(),
    });
  }

  async use(part: string, lot: string, quantity = 1, by: HandName = 'bench'): Promise<void> {
    await takePart({
      jobId: this.jobId,
      version: await this.version(),
      lotId: this.shop.lot(part, lot),
      quantity,
      actor: this.shop.hands[by],
      now: this.step(),
    });
  }

  async work(text: string, minutes: number, by: HandName = 'bench'): Promise<void> {
    await recordWork({
      jobId: this.jobId,
      text,
      minutes,
      actor: this.shop.hands[by],
      now: this.step(Math.min(minutes, 150)),
    });
  }

  /** Records one result of the check whose label begins so. */
  async check(label: string, given: GivenEntry, note = '', by: HandName = 'bench'): Promise<void> {
    const check = (await this.sheet()).find((each) => each.label.startsWith(label));
    if (!check) throw new Error(`${this.key}: no check begins with ${label}`);
    await recordCheck({
      jobId: this.jobId,
      checkId: check.id,
      given,
      note,
      actor: this.shop.hands[by],
      now: this.step(),
    });
  }

  /** Passes every check that has not passed yet, but for those that come after `until` on the sheet. */
  async passChecks(by: HandName = 'bench', until?: string): Promise<void> {
    const passed = await db.checkEntry.findMany({
      where: { jobId: this.jobId, isPassed: true },
      select: { checkId: true },
    });
    for (const check of await this.sheet()) {
      if (!passed.some((entry) => entry.checkId === check.id)) {
        const given = passingEntry(check, this.key);
        await recordCheck({
          jobId: this.jobId,
          checkId: check.id,
          given,
          note: '',
          actor: this.shop.hands[by],
          now: this.step(3),
        });
      }
      if (until !== undefined && check.label.startsWith(until)) return;
    }
  }

  async pay(
    o: { amount?: number; method?: 'bank transfer' | 'card' | 'cash' | 'pay link' } = {},
  ): Promise<void> {
    const account = await this.account();
    const method = o.method ?? (pick(`${this.key}/method`, 0, 2) === 0 ? 'card' : 'bank transfer');
    await recordPayment({
      jobId: this.jobId,
      amount: o.amount ?? account.owed,
      method,
      reference: method === 'bank transfer' ? showNumber(account.number) : '',
      receivedOn: dayOfInstant(this.at),
      actor: this.shop.hands.front,
      now: this.step(),
    });
  }

  async sendBack(o: { by?: HandName; postage?: number } = {}): Promise<string | null> {
    const job = await db.job.findUniqueOrThrow({
      where: { id: this.jobId },
      select: { version: true, customer: { select: { country: true } } },
    });
    const { certificate } = await dispatch({
      jobId: this.jobId,
      version: job.version,
      handover: carrierFor(job.customer.country, this.key),
      postage: o.postage ?? 0,
      actor: this.shop.hands[o.by ?? 'front'],
      now: this.step(),
    });
    return certificate?.number ?? null;
  }

  /** What the clock does by itself (lib/jobs/clock-round.ts), once the day has come. */
  async closeByClock(): Promise<void> {
    const { carrier, customer } = await db.job.findUniqueOrThrow({
      where: { id: this.jobId },
      select: { carrier: true, customer: { select: { country: true } } },
    });
    const way = { carrier, from: 'GB', to: customer.country };
    const sentOn = dayOfInstant(this.at);
    const { calendar, today } = this.shop.days;
    const closes = closesOn({ sentOn, transitDays: transitTo(way, await readCarrierRows()) }, calendar);
    if (compareDays(closes, today) >= 0) return;
    const days = daysBetween(sentOn, closes);
    this.at = minutesLater(this.at, days * 24 * 60);
    await this.move('close', {
      by: 'clock',
      note: `Closed ${days} days after it was sent back`,
    });
  }

  async photograph(purpose: PhotoPurpose, shots: Shot[], by: HandName = 'bench'): Promise<void> {
    const photos = await this.photos(purpose, shots);
    await addPhotos({ jobId: this.jobId, purpose, photos, actor: this.shop.hands[by], now: this.step() });
  }

  /** Points at places on the photo of a caption. */
  async pointAt(caption: string, marks: readonly PhotoMark[], by: HandName = 'bench'): Promise<void> {
    const photo = await db.photo.findFirstOrThrow({
      where: { jobId: this.jobId, caption },
      select: { id: true },
    });
    await describePhoto({
      jobId: this.jobId,
      version: await this.version(),
      photoId: photo.id,
      caption,
      marks,
      actor: this.shop.hands[by],
      now: this.at,
    });
  }

  async lay(wire: WireInput, by: HandName = 'bench'): Promise<void> {
    await recordWire({ jobId: this.jobId, wire, actor: this.shop.hands[by], now: this.at });
  }

  async say(text: string, by: 'customer' | HandName = 'customer'): Promise<void> {
    const actor: Actor = by === 'customer' ? { kind: by } : this.shop.hands[by];
    await sendMessage({ jobId: this.jobId, text, actor, now: this.step() });
  }

  /** What the customer wrote last needs no answer. */
  async settle(by: HandName = 'front'): Promise<void> {
    const { id } = await db.message.findFirstOrThrow({
      where: { jobId: this.jobId },
      orderBy: { at: 'desc' },
      select: { id: true },
    });
    await settleMessage({
      jobId: this.jobId,
      messageId: id,
      how: 'no-answer-needed',
      note: '',
      actor: this.shop.hands[by],
      now: this.step(),
    });
  }

  private sheet() {
    return db.check.findMany({
      where: { sheet: { jobs: { some: { id: this.jobId } } } },
      orderBy: { position: 'asc' },
    });
  }

  private async account(): Promise<{ number: string; owed: number }> {
    const { number, ...money } = await db.job.findUniqueOrThrow({
      where: { id: this.jobId },
      select: {
        number: true,
        payments: { select: { amountMinor: true, purpose: true } },
        invoices: { select: { kind: true, payableMinor: true } },
        quotes: { select: { revisions: { select: { state: true, grossMinor: true } } } },
      },
    });
    return { number, owed: balanceOf(money).owed };
  }

  async photos(name: string, shots: readonly Shot[]): Promise<NewPhoto[]> {
    const taken: NewPhoto[] = [];
    for (const [i, shot] of shots.entries()) taken.push(await takePhoto(shot, `${this.key}/${name}/${i}`));
    return taken;
  }
}
