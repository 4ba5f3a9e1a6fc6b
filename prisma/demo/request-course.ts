import { unitName } from '@/lib/catalogue/rules/unit-name';
import { db } from '@/lib/db/client';
import { book } from '@/lib/jobs/book';
import { readBookingRepair } from '@/lib/jobs/booking-repair';
import { findJobByToken, findQuoteByToken, hashToken } from '@/lib/jobs/private-link';
import { draftAnswers, type HistoryKey } from '@/lib/jobs/rules/booking';
import type { NewPhoto } from '@/lib/jobs/write-photos';
import { answerQuestion } from '@/lib/quotes/answer-question';
import { askCustomer } from '@/lib/quotes/ask-customer';
import { askForQuote } from '@/lib/quotes/ask-for-quote';
import { startBooking } from '@/lib/quotes/book-quote';
import { decideQuote } from '@/lib/quotes/decide-quote';
import type { LineKind } from '@/lib/quotes/rules/lines';
import { requestForm } from '@/lib/quotes/rules/request-answers';
import { sendQuote } from '@/lib/quotes/send-quote';
import { turnDown } from '@/lib/quotes/turn-down';
import { lapsePrices } from '@/lib/quotes/write-lapses';
import { DEMO_MODELS, DEMO_REPAIRS } from './catalogue';
import { Course } from './course';
import { addressOf, type CustomerKey } from './customers';
import { minutesLater } from './days';
import { type Shot, takePhoto } from './photos';
import type { Shop } from './shop';
import type { HandName } from './staff';
import { Steps } from './steps';
import { inTurn } from './turns';

export type DemoRequest = {
  customer: CustomerKey;
  /** key of a model of the catalogue, or a device in words that it does not have */
  model?: string;
  device?: string;
  serial?: string;
  symptoms?: string[];
  problem: string;
  history?: HistoryKey[];
  photos?: Shot[];
  at: Date;
};

export type DemoPrice = {
  /** key of the repair whose cover and check sheet the work gets */
  repair: string;
  /** kind, what for, amount with tax */
  lines: (readonly [kind: LineKind, description: string, amountMinor: number])[];
  reason: string;
  proposal: string;
  workingDays: number;
  note?: string;
};

/** One request for a price on its way to a yes, a no or an end, told step by step with the program's own use cases. */
export class RequestCourse extends Steps {
  private constructor(
    shop: Shop,
    key: string,
    readonly quoteId: string,
    readonly customer: CustomerKey,
    at: Date,
  ) {
    super(shop, key, at);
  }

  /** Asks as a customer does. */
  static async ask(shop: Shop, key: string, o: DemoRequest): Promise<RequestCourse> {
    await shop.turns.until(o.at);
    const model = DEMO_MODELS.find((each) => each.key === o.model);
    const { name, email, phone } = addressOf(o.customer);
    const asked = await askForQuote({
      answers: requestForm.parse({
        ...(model ? { model: model.id } : {}),
        device: model ? unitName(model) : o.device,
        serial: o.serial ?? '',
        symptoms: o.symptoms ?? [],
        problem: o.problem,
        history: o.history ?? [],
        name,
        email,
        phone,
      }),
      photos: await photosOf(`${key}/request`, o.photos ?? []),
      now: o.at,
    });
    const found = await findQuoteByToken(asked.token);
    if (!found) throw new Error(`${key}: the quote was not found by its link`);
    return inTurn(new RequestCourse(shop, key, found.quoteId, o.customer, minutesLater(o.at, 5)));
  }

  async question(text: string, by: HandName = 'front'): Promise<void> {
    await askCustomer({ ...(await this.seen(by)), text });
  }

  async answer(text: string, shots: Shot[] = []): Promise<void> {
    const photos = await photosOf(`${this.key}/answer`, shots);
    await answerQuestion({ quoteId: this.quoteId, text, photos, now: this.step() });
  }

  /** Sends a price, held for 30 days. Amounts are with tax, as the workshop keeps its prices. */
  async price(o: DemoPrice, by: HandName = 'owner'): Promise<void> {
    const repair = DEMO_REPAIRS.find((each) => each.key === o.repair);
    if (!repair) throw new Error(`no repair ${o.repair}`);
    await sendQuote({
      ...(await this.seen(by)),
      repairId: repair.id,
      lines: o.lines.map(([kind, description, amount]) => ({
        kind,
        description,
        amount,
        category: 'S',
        rateBps: 2000,
      })),
      reason: o.reason,
      proposal: o.proposal,
      workingDays: o.workingDays,
      note: o.note ?? '',
      validDays: 30,
    });
  }

  async decide(decision: 'accepted' | 'declined'): Promise<void> {
    const { revision } = await db.quoteRevision.findFirstOrThrow({
      where: { quoteId: this.quoteId, state: 'sent' },
      select: { revision: true },
    });
    await decideQuote({ quoteId: this.quoteId, revision, decision, now: this.step() });
  }

  async turnDown(text: string, by: HandName = 'owner'): Promise<void> {
    await turnDown({ ...(await this.seen(by)), text });
  }

  /** The clock's round at this instant, in which this price alone is due. */
  async clockRound(due: 'reminded' | 'lapsed'): Promise<void> {
    const done = await lapsePrices(this.step());
    const expected = { reminded: 0, lapsed: 0, [due]: 1 };
    if (done.reminded !== expected.reminded || done.lapsed !== expected.lapsed)
      throw new Error(`${this.key}: the round reminded of ${done.reminded} prices and ended ${done.lapsed}`);
  }

  /** Books what was accepted, with the questions that the request did not ask, and goes on as any job. */
  async book(o: { sent?: string[]; battery?: string }): Promise<Course> {
    const now = this.step(8);
    const token = await startBooking({ quoteId: this.quoteId, now });
    const tokenHash = hashToken(token);
    const draft = await db.bookingDraft.findUniqueOrThrow({
      where: { tokenHash },
      select: { answers: true, repairId: true },
    });
    const shown = await readBookingRepair(draft.repairId, this.quoteId);
    if (!shown) throw new Error(`${this.key}: there is no price to book at`);
    const answers = draftAnswers.parse({
      ...draftAnswers.parse(draft.answers),
      parcel: {
        accessories: o.sent ?? [],
        otherAccessory: '',
        battery: o.battery ?? 'healthy',
        data: 'saved',
      },
      address: addressOf(this.customer),
    });
    await db.bookingDraft.update({ where: { tokenHash }, data: { answers, updatedAt: now } });
    const booked = await book({
      draftToken: token,
      shownMinor: shown.grossMinor,
      isStartAsked: true,
      now: this.step(),
    });
    const found = await findJobByToken(booked.token);
    if (!found) throw new Error(`${this.key}: the booked job was not found by its link`);
    return inTurn(new Course(this.shop, this.key, found.jobId, this.customer, this.at));
  }

  /** What every step of the staff names: the version they see, who they are, and when. */
  private async seen(by: HandName) {
    const { version } = await db.quote.findUniqueOrThrow({
      where: { id: this.quoteId },
      select: { version: true },
    });
    return { quoteId: this.quoteId, version, actor: this.shop.hands[by], now: this.step() };
  }
}

async function photosOf(name: string, shots: readonly Shot[]): Promise<NewPhoto[]> {
  const taken: NewPhoto[] = [];
  for (const [i, shot] of shots.entries()) taken.push(await takePhoto(shot, `${name}/${i}`));
  return taken;
}
