import autocannon from 'autocannon';
import { type Asked, barePage, needDynamic, type Page, sampleAt, someAddress, tracking } from './ask-pages';
import { type Figure, median, medianRatio } from './figures';

const ROUNDS = 5;
const SECONDS = 3;
const WARM_SECONDS = 2;
const AT_ONCE = 8;

/** Requests a second, and the processor's milliseconds the app took for each, which other work on the machine leaves alone. */
type Rate = { rate: number; effort: number };

/** Requests a second of the public tracking page, against a bare page of the same build and against fewer jobs, in turn. */
export async function* throughputFigures(few: Asked, many: Asked): AsyncGenerator<Figure> {
  await needDynamic(few, barePage);
  const idle = many.app.memory();
  for (const asked of [few, many])
    for (const page of [barePage, tracking]) await ask(asked, page, WARM_SECONDS);
  const bare: Rate[] = [];
  const atFew: Rate[] = [];
  const atMany: Rate[] = [];
  let held = 0;
  for (let round = 0; round < ROUNDS; round += 1) {
    bare.push(await ask(few, barePage, SECONDS));
    atFew.push(await ask(few, tracking, SECONDS));
    atMany.push(await ask(many, tracking, SECONDS));
    held = Math.max(held, many.app.memory());
  }
  yield* [
    compared('tracking to a bare page of the same build', atFew, bare, 0.8),
    compared('tracking at many jobs to few', atMany, atFew, 0.95),
    { what: 'start of a built app to its first page', value: `${few.app.firstPage.toFixed(1)} s` },
    {
      what: 'memory of all processes of the app, idle and under that load',
      value: `${idle.toFixed(0)} and ${held.toFixed(0)} MB`,
    },
  ];
}

function compared(what: string, ours: readonly Rate[], theirs: readonly Rate[], least: number): Figure {
  const of = (rates: readonly Rate[], key: keyof Rate) => rates.map((each) => each[key]);
  const ratio = medianRatio(of(ours, 'rate'), of(theirs, 'rate'));
  const effort = medianRatio(of(theirs, 'effort'), of(ours, 'effort'));
  const told = (rates: readonly Rate[]) =>
    `${median(of(rates, 'rate')).toFixed(0)} a second, ${median(of(rates, 'effort')).toFixed(1)} ms of processor each`;
  return {
    what,
    value: `${told(ours)} to ${told(theirs)}: ${ratio.toFixed(2)} x, ${effort.toFixed(2)} x by processor`,
    aim: `at least ${least} x`,
    reached: ratio >= least,
  };
}

async function ask(asked: Asked, page: Page, seconds: number): Promise<Rate> {
  const before = asked.app.processorTime();
  let i = 0;
  const { requests, non2xx, errors, duration } = await autocannon({
    url: asked.app.origin,
    connections: AT_ONCE,
    duration: seconds,
    requests: [
      {
        method: 'GET',
        setupRequest: (request) => ({
          ...request,
          path: page.path(sampleAt(asked.samples, i++)),
          headers: { ...request.headers, 'x-forwarded-for': someAddress() },
        }),
      },
    ],
  });
  if (non2xx + errors > 0)
    throw new Error(`${page.name}: ${non2xx + errors} of ${requests.total} requests failed`);
  return {
    rate: requests.total / duration,
    effort: (asked.app.processorTime() - before) / requests.total,
  };
}
