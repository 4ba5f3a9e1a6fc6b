import { type Figure, growthFigure } from './figures';
import type { Filled } from './filled';

/** The readings behind pages, asked of both databases in turn, so that the load of the moment falls on both. */
export async function* readingFigures(few: Filled, many: Filled): AsyncGenerator<Figure> {
  for (const [place, { page, runs, most, queries }] of many.readings.entries()) {
    const times = { few: [] as number[], many: [] as number[], statements: queries };
    for (let i = 0; i < runs; i += 1) {
      times.few.push(await few.time(place, i));
      times.many.push(await many.time(place, i));
    }
    yield growthFigure(`reading, ${page}`, times, most);
  }
}
