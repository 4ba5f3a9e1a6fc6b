import type { Steps } from './steps';

type Waiting = { at: Date; go: () => void };

/**
 * Lets stories happen side by side as they did: whoever's next step lies earliest takes it, one at a time. So invoices get
 * their numbers in the order of their days, and a promise sees the bench as it stood on that day.
 */
export class Turns {
  private readonly waiting: Waiting[] = [];
  private readonly endings = new Map<string, Promise<unknown>>();
  /** stories that are neither waiting for their turn nor for the end of another */
  private running = 0;

  /** Tells all stories to their ends. The first that fails ends it. */
  async tellAll(stories: readonly { key: string; tell: () => Promise<unknown> }[]): Promise<void> {
    this.running = stories.length;
    for (const { key, tell } of stories)
      this.endings.set(
        key,
        tell().finally(() => this.rest()),
      );
    await Promise.all(this.endings.values());
  }

  /** Waits until nothing earlier is left to happen. */
  async until(at: Date): Promise<void> {
    await new Promise<void>((go) => {
      this.waiting.push({ at, go });
      this.rest();
    });
  }

  /** Waits for the end of another story. */
  async endOf(key: string): Promise<void> {
    // Stories begin one after the other in the same tick; the one that is waited for may stand further down.
    await Promise.resolve();
    const ending = this.endings.get(key);
    if (!ending) throw new Error(`there is no story ${key}`);
    this.rest();
    await ending;
    this.running += 1;
  }

  private rest(): void {
    this.running -= 1;
    if (this.running > 0 || this.waiting.length === 0) return;
    const earliest = this.waiting.reduce((least, each) => (each.at < least.at ? each : least));
    this.waiting.splice(this.waiting.indexOf(earliest), 1);
    this.running = 1;
    earliest.go();
  }
}

/** The same course, each of its steps waiting for its turn. */
export function inTurn<T extends Steps>(course: T): T {
  return new Proxy(course, {
    get(steps, name) {
      const value: unknown = Reflect.get(steps, name, steps);
      if (typeof value !== 'function') return value;
      if (Object.prototype.toString.call(value) !== '[object AsyncFunction]') return value;
      return async (...told: unknown[]) => {
        await steps.shop.turns.until(steps.at);
        return Reflect.apply(value, steps, told);
      };
    },
  });
}
