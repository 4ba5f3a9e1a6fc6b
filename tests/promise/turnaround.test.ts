import { describe, expect, test } from 'vitest';
import { STAGES } from '@/lib/jobs/rules/stages';
import { type StayCount, stageDays, WAITING_STAGES } from '@/lib/promise/rules/turnaround';

const stay = (stage: string, days: number, ended = 1): StayCount => ({
  stage,
  days,
  ended,
  stillHere: 1 - ended,
});

describe('days in a stage', () => {
  test('are those by which half, and four of five, had ended', () => {
    const ten = Array.from({ length: 10 }, (_, place) => stay('on-bench', place + 1));
    expect(stageDays(ten)).toMatchObject([
      { stage: 'on-bench', waitsOn: 'us', stays: 10, stillHere: 0, half: { days: 5 }, mostly: { days: 8 } },
    ]);
  });

  test('count a stay that goes on for as long as it has lasted', () => {
    const ended = [1, 2, 3].map((days) => stay('awaiting-parts', days));
    expect(stageDays(ended)[0]).toMatchObject({ half: { days: 2 }, mostly: { days: 3 } });
    expect(stageDays([...ended, stay('awaiting-parts', 9, 0)])[0]).toMatchObject({
      stays: 4,
      stillHere: 1,
      half: { days: 2 },
      mostly: null,
    });
  });

  // Freireich et al. 1963, treated: median 23, from 16 to not reached, as R's survfit prints it (from memory; the curve itself
  // is tested in tests/published/statistics.test.ts against print).
  test('have the interval of the published median, open where its end is not in sight', () => {
    const text = '6 6 6 6+ 7 9+ 10 10+ 11+ 13 16 17+ 19+ 20+ 22 23 25+ 32+ 32+ 34+ 35+';
    const stays = text
      .split(' ')
      .map((each) => stay('assessing', Number.parseInt(each, 10), each.endsWith('+') ? 0 : 1));
    expect(stageDays(stays)[0]?.half).toEqual({ days: 23, low: 16, high: null });
  });

  test('are told in the order of the stages, and not of stages nobody stayed in', () => {
    const told = stageDays([stay('ready', 1), stay('arrived', 1), stay('closed', 9)]);
    expect(told.map(({ stage }) => stage)).toEqual(['arrived', 'ready']);
    expect(stageDays([])).toEqual([]);
  });

  test('are told of stages that exist', () => {
    expect(STAGES).toEqual(expect.arrayContaining([...WAITING_STAGES]));
  });
});
