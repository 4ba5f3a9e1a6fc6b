import { expect, it } from 'vitest';
import { provingState } from '@/lib/bench/rules/checks';
import { mainsChecks } from '@/lib/bench/rules/mains-checks';
import { countsFrom } from '@/lib/jobs/rules/reopened';

const at = (hour: number) => new Date(Date.UTC(2026, 10, 25, hour));
const moved = (move: string, hour: number) => ({
  kind: 'moved',
  at: at(hour),
  data: { move, from: 'proving', to: 'on-bench' },
  fromStage: 'proving',
});
const sheet = [
  { id: 'insulation', caution: 'mains-test' },
  { id: 'sound', caution: null },
  { id: 'joint', caution: 'static' },
];
const passed = (checkId: string, hour: number) => ({ checkId, isPassed: true, at: at(hour) });

// EN 50678 (VDE 0701), from memory: the test comes after the repair, so what was measured before a further one says nothing.
it('an electrical safety test is done again once the unit went back to the bench, the other checks that passed are not', () => {
  const before = [
    passed('insulation', 9),
    passed('joint', 9),
    { checkId: 'sound', isPassed: false, at: at(9) },
  ];
  const events = [moved('fail-check', 10)];
  const after = provingState(sheet, [...before, passed('sound', 12)], countsFrom(events));
  expect(after).toMatchObject({ missing: [{ id: 'insulation' }], isProved: false });
  const again = [...before, passed('sound', 12), passed('insulation', 12)];
  expect(provingState(sheet, again, countsFrom(events)).isProved).toBe(true);
});

it('every check is done again after the work was opened again', () => {
  const entries = sheet.map(({ id }) => passed(id, 9));
  expect(provingState(sheet, entries, countsFrom([])).isProved).toBe(true);
  expect(provingState(sheet, entries, countsFrom([moved('reopen-work', 10)])).missing).toHaveLength(3);
});

it.each([
  ['assessing', 0],
  ['on-bench', 0],
  ['proving', 3],
  ['ready', 3],
])('a yes to more work, from %s, leaves %i checks to do again', (fromStage, again) => {
  const yes = { kind: 'offer-decided', at: at(10), data: { revision: 2, decision: 'accepted' }, fromStage };
  const entries = sheet.map(({ id }) => passed(id, 9));
  expect(provingState(sheet, entries, countsFrom([yes])).missing).toHaveLength(again);
});

it.each(['claim-contested', 'claim-reopened'])('every check is done again after %s', (kind) => {
  const begun = { kind, at: at(10), data: {}, fromStage: 'ready' };
  const entries = sheet.map(({ id }) => passed(id, 9));
  expect(provingState(sheet, entries, countsFrom([begun])).missing).toHaveLength(3);
});

it('counts a safety test from the later of a failed check and of work that was opened again', () => {
  const since = (...events: ReturnType<typeof moved>[]) =>
    sheet.map((check) => countsFrom(events)(check)?.getUTCHours() ?? null);
  expect(since(moved('reopen-work', 10), moved('fail-check', 12))).toEqual([12, 10, 10]);
  expect(since(moved('fail-check', 10), moved('reopen-work', 12))).toEqual([12, 12, 12]);
  expect(since(moved('fail-check', 10))).toEqual([10, null, null]);
});

it('no reading below nothing passes: the leads were not zeroed', () => {
  const currents = [...mainsChecks(1), ...mainsChecks(2)].filter(({ high }) => high !== null);
  expect(currents.length).toBeGreaterThan(2);
  expect(currents.every(({ low }) => low === 0)).toBe(true);
});
