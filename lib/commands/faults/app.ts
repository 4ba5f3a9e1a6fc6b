import { type ChildProcess, fork } from 'node:child_process';
import { z } from 'zod';

const answered = z.discriminatedUnion('ok', [
  z.object({ id: z.number(), ok: z.literal(true), value: z.unknown().optional() }),
  z.object({ id: z.number(), ok: z.literal(false), error: z.string() }),
]);

type Waiting = { resolve: (value: unknown) => void; reject: (error: Error) => void };

/** The app of a run as whoever drives it sees it: steps go in, acknowledgements come out, until it is killed. */
export class App {
  private readonly waiting = new Map<number, Waiting>();
  private next = 1;
  readonly ended: Promise<void>;

  private constructor(private readonly child: ChildProcess) {
    this.ended = new Promise((resolve) => child.on('exit', () => resolve()));
    child.on('message', (message) => {
      const answer = answered.parse(message);
      const waiting = this.waiting.get(answer.id);
      this.waiting.delete(answer.id);
      if (answer.ok) waiting?.resolve(answer.value);
      else waiting?.reject(new Error(answer.error));
    });
    child.on('error', () => {});
    void this.ended.then(() => {
      for (const { reject } of this.waiting.values()) reject(new Error('the app ended'));
    });
  }

  /**
   * Starts the process, which loads the program and waits: loading takes most of a start, so the next one is loaded while
   * this one works.
   */
  static load(environment: Record<string, string>): App {
    return new App(
      fork('lib/commands/faults/victim.ts', [], {
        execArgv: ['--import', 'tsx'],
        env: { ...process.env, ...environment },
      }),
    );
  }

  /** Resolves when it works; one that ends before that is said to have ended. */
  async begin(): Promise<void> {
    await this.ask({ step: 'begin' });
  }

  ask(step: Record<string, unknown>): Promise<unknown> {
    const id = this.next++;
    return new Promise((resolve, reject) => {
      this.waiting.set(id, { resolve, reject });
      if (!this.child.connected || this.child.signalCode !== null) return reject(new Error('the app ended'));
      this.child.send({ ...step, id }, (error) => error && reject(new Error('the app ended')));
    });
  }

  async kill(): Promise<void> {
    this.child.kill('SIGKILL');
    await this.ended;
  }

  /** Lets it finish what it has in hand. */
  async stop(): Promise<void> {
    await this.ask({ step: 'stop' });
    this.child.disconnect();
    await this.ended;
  }
}
