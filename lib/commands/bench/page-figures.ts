import { type Asked, askOnce, CUSTOMER_PAGES, STAFF_PAGES } from './ask-pages';
import { countInLog, type ServerLog } from './count-in-log';
import { type Figure, growthFigure } from './figures';

const WARM = 5;

/** Whole pages over HTTP, at few and at many jobs in turn, and how many statements each sends to a server. */
export async function* pageFigures(
  few: Asked,
  many: Asked,
  log: ServerLog | undefined,
): AsyncGenerator<Figure> {
  for (const page of [...CUSTOMER_PAGES, ...STAFF_PAGES]) {
    const { name, runs = 60, most } = page;
    const times: { few: number[]; many: number[] } = { few: [], many: [] };
    for (let i = 0; i < WARM + runs; i += 1) {
      times.few.push((await askOnce(few, page, i)).took);
      times.many.push((await askOnce(many, page, i)).took);
    }
    const statements = log && (await countTwice(log, () => askOnce(many, page, WARM + runs)));
    const counted = { few: times.few.slice(WARM), many: times.many.slice(WARM), statements };
    yield growthFigure(`page, ${name}`, counted, most);
  }
}

/** The fewer of two: one request a minute also reads anew what the app remembers for a minute (lib/remembered.ts). */
async function countTwice(log: ServerLog, ask: () => Promise<unknown>): Promise<number> {
  return Math.min(await countInLog(log, ask), await countInLog(log, ask));
}
