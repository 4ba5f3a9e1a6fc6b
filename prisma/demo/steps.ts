import type { Day } from '@/lib/calendar/day';
import { clock, dayOfInstant, minutesLater } from './days';
import type { Shop } from './shop';

/** The clock of one story: steps follow each other as on a working day, and none lies ahead of now. */
export class Steps {
  constructor(
    readonly shop: Shop,
    readonly key: string,
    /** The instant of the next step. */
    public at: Date,
  ) {}

  /** Goes on to a day and a time of day. */
  on(day: Day, time: string): this {
    const next = clock(day, time);
    if (next < this.at) throw new Error(`${this.key}: ${next.toISOString()} lies before the step before it`);
    this.at = next;
    return this;
  }

  /** Goes on n working days later; 0 is the same day, a little later, if it is one. */
  later(workingDays: number, time: string): this {
    return this.on(this.shop.days.workedAfter(dayOfInstant(this.at), workingDays), time);
  }

  /** The instant of this step; the next one comes some minutes later. */
  protected step(minutes = 6): Date {
    const { at } = this;
    if (at > this.shop.days.now) throw new Error(`${this.key}: a step lies ahead, at ${at.toISOString()}`);
    this.at = minutesLater(at, minutes);
    return at;
  }
}
