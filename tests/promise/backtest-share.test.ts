import { describe, expect, it } from 'vitest';
import { addDays, day } from '@/lib/calendar/day';
import { addWorkingDays, type WorkingCalendar } from '@/lib/calendar/working';
import { backtest } from '@/lib/promise/rules/backtest';
import type { BenchJob } from '@/lib/promise/rules/promise';
import { chance } from '@/tests/makers/chance';

const calendar: WorkingCalendar = { weekend: [6, 7], closed: new Map() };

/**
 * Jobs that take any of 1 to 250 working days alike, one every four weeks. The spread is far wider than life, so that whole
 * days do not round the share up by more than a hundredth; the distance keeps those that are not finished yet, which are
 * the slow ones, few among those that are.
 */
function simulated(count: number): BenchJob[] {
  const random = chance(20261125);
  return Array.from({ length: count }, (_, index) => {
    const arrivedOn = addDays(day('2001-01-01'), index * 28);
    const days = 1 + Math.floor(random() * 250);
    return {
      repairId: 'usb-c',
      familyId: 'recorders',
      minutes: 0,
      statedDays: 5,
      arrivedOn,
      readyOn: addWorkingDays(arrivedOn, days, calendar),
      waited: [],
    };
  });
}

describe('promises made on 5,000 simulated jobs', () => {
  it('are kept for the share they state, within its binomial interval', { timeout: 120_000 }, () => {
    const [result] = backtest(
      simulated(5000),
      { calendar, capacityMinutesDay: 360, today: day('2400-01-01') },
      [0.8],
    );
    if (!result) throw new Error('no result');
    const { promises, kept } = result.counted;
    expect(promises).toBeGreaterThan(4500);
    // Binomial interval at 99 %, normal approximation: z = 2.5758 (handbook tables of the normal distribution).
    const half = 2.5758 * Math.sqrt((0.8 * 0.2) / promises);
    expect(kept / promises).toBeGreaterThan(0.8 - half);
    expect(kept / promises).toBeLessThan(0.8 + half);
  });
});
