import { addDays, type Day } from '@/lib/calendar/day';
import { customerPrice } from '@/lib/catalogue/rules/price';
import { db } from '@/lib/db/client';
import { book } from '@/lib/jobs/book';
import { startDraft } from '@/lib/jobs/draft';
import { nameParcel } from '@/lib/jobs/name-parcel';
import { findJobByToken, hashToken } from '@/lib/jobs/private-link';
import { draftAnswers, type HistoryKey } from '@/lib/jobs/rules/booking';
import { DEMO_MODELS, DEMO_PARTS, DEMO_REPAIRS } from './catalogue';
import { Course } from './course';
import { addressOf, type CustomerKey } from './customers';
import { clock, type DemoDays, minutesLater } from './days';
import type { Hands } from './staff';
import { inTurn, type Turns } from './turns';
import { DEMO_WORKSHOP } from './workshop';

export type DemoBooking = {
  repair: string;
  customer: CustomerKey;
  serial: string;
  problem: string;
  history?: HistoryKey[];
  /** accessories sent along */
  sent?: string[];
  other?: string;
  battery?: string;
  data?: 'none' | 'saved' | 'not-saved';
  /** reference of the parcel, when the customer told it */
  parcel?: string;
  at: Date;
};

/** The workshop of the demonstration: its days, its people, and how a customer books with it. */
export class Shop {
  private readonly courses = new Map<string, Course>();

  constructor(
    readonly days: DemoDays,
    readonly hands: Hands,
    readonly turns: Turns,
  ) {}

  /** The instant of a time of day, n calendar days before today. */
  ago(days: number, time: string): Date {
    return clock(this.days.ago(days), time);
  }

  /** The instant of a time of day, n calendar days before a day worked lately, so that a parcel had time to come. */
  before(workingDaysBack: number, days: number, time: string): Date {
    return clock(addDays(this.days.back(workingDaysBack), -days), time);
  }

  /** The instant some minutes before now. */
  minutesAgo(minutes: number): Date {
    return minutesLater(this.days.now, -minutes);
  }

  back(workingDays: number): Day {
    return this.days.back(workingDays);
  }

  lot(part: string, code: string): string {
    const lot = DEMO_PARTS.find((each) => each.code === part)?.lots.find((each) => each.code === code);
    if (!lot) throw new Error(`no lot ${code} of ${part}`);
    return lot.id;
  }

  /**
   * Books as a customer does. The pages of the form are saved in one write instead of four: that
   * takes two of seventy queries instead of thirty, on a first start that somebody waits for.
   */
  async book(key: string, o: DemoBooking): Promise<Course> {
    const repair = DEMO_REPAIRS.find((each) => each.key === o.repair);
    const model = DEMO_MODELS.find((each) => each.key === repair?.model);
    if (!repair || !model) throw new Error(`no repair ${o.repair}`);
    await this.turns.until(o.at);
    const token = await startDraft({ repairId: repair.id, now: minutesLater(o.at, -9) });
    const answers = draftAnswers.parse({
      unit: { serial: o.serial },
      problem: { problem: o.problem, history: o.history ?? [] },
      parcel: {
        accessories: o.sent ?? [],
        otherAccessory: o.other ?? '',
        battery: model.battery === 'none' ? 'none' : (o.battery ?? 'healthy'),
        data: o.data ?? 'saved',
      },
      address: addressOf(o.customer),
    });
    const tokenHash = hashToken(token);
    await db.bookingDraft.update({
      where: { tokenHash },
      data: { answers, updatedAt: minutesLater(o.at, -2) },
    });
    const shownMinor = customerPrice(repair, DEMO_WORKSHOP.pricesIncludeTax).gross;
    const booked = await book({ draftToken: token, shownMinor, isStartAsked: true, now: o.at });
    const found = await findJobByToken(booked.token);
    if (!found) throw new Error(`${key}: the booked job was not found by its link`);
    if (o.parcel) await nameParcel({ jobId: found.jobId, reference: o.parcel, now: o.at });
    const course = inTurn(new Course(this, key, found.jobId, o.customer, minutesLater(o.at, 5)));
    this.courses.set(key, course);
    return course;
  }

  /** The job of another story, once that is told. */
  async told(key: string): Promise<Course> {
    await this.turns.endOf(key);
    const course = this.courses.get(key);
    if (!course) throw new Error(`the story ${key} has no job`);
    return course;
  }
}
