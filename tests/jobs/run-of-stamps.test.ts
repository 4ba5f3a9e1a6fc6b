import { describe, expect, it } from 'vitest';
import { datedStamps, runOfStamps } from '@/lib/jobs/rules/run-of-stamps';
import type { Stage } from '@/lib/jobs/rules/stages';

const reached = (...stages: Stage[]) =>
  stages.map((stage, index) => ({ stage, at: new Date(Date.UTC(2026, 11, 1 + index, 23, 30)) }));
const states = (present: Stage, ...before: Stage[]) =>
  runOfStamps(present, reached(...before, present)).map(({ stage, state }) => `${stage} ${state}`);

describe('the run of stamps of a job', () => {
  it('has what was, what is and what comes', () => {
    expect(states('on-bench', 'booked', 'arrived', 'assessing')).toEqual([
      'booked done',
      'arrived done',
      'assessing done',
      'on-bench now',
      'proving waiting',
      'ready waiting',
      'sent-back waiting',
      'closed waiting',
    ]);
  });

  it('says of a unit that goes back unrepaired that the bench was not needed, also once it is closed', () => {
    const before: Stage[] = ['booked', 'arrived', 'assessing', 'awaiting-approval', 'declined'];
    expect(states('ready', ...before)).toEqual(
      expect.arrayContaining(['on-bench skipped', 'proving skipped', 'ready now', 'sent-back waiting']),
    );
    expect(states('closed', ...before, 'ready', 'sent-back')).toEqual(
      expect.arrayContaining(['on-bench skipped', 'proving skipped', 'closed done']),
    );
  });

  it('stops where a job was cancelled, with nothing to come', () => {
    expect(states('cancelled', 'booked')).toEqual(['booked done', 'cancelled stopped']);
  });

  it('names each stage and gives its day in the zone of the workshop', () => {
    const [booked] = datedStamps('booked', reached('booked'), 'Europe/London');
    expect(booked).toEqual({ stage: 'booked', label: 'Booked', state: 'now', day: '2026-12-01' });
    expect(datedStamps('booked', reached('booked'), 'Europe/Berlin')[0]?.day).toBe('2026-12-02');
  });
});
