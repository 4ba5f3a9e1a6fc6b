import { describe, expect, test } from 'vitest';
import { evaluateEntry, limitsText } from '@/lib/bench/rules/checks';
import { entryText } from '@/lib/bench/rules/entry-text';
import { readKeptProbes } from '@/lib/bench/rules/kept-probes';
import type { PinTable } from '@/lib/bench/rules/pin-table';
import { PIN_TABLES } from '@/lib/bench/rules/pin-tables/all';
import { dcJack21 } from '@/lib/bench/rules/pin-tables/dc-jack-2-1-mm';
import { midiDin5 } from '@/lib/bench/rules/pin-tables/midi-din-5';
import { usbMicroB } from '@/lib/bench/rules/pin-tables/usb-micro-b';
import { usbTypeC } from '@/lib/bench/rules/pin-tables/usb-type-c';
import {
  judgeProbes,
  probeFaults,
  probesLine,
  probesLines,
  probesOf,
  standingOf,
} from '@/lib/bench/rules/probes';

const allGood = (table: PinTable) =>
  new Map<string, string>(
    probesOf(table)
      .filter((probe) => !probe.mayBeJoined)
      .map((probe) => [probe.key, probe.kind === 'pin' ? 'through' : 'open']),
  );
const judged = (table: PinTable, over: Record<string, string> = {}) => {
  const answer = judgeProbes(table, new Map([...allGood(table), ...Object.entries(over)]));
  if (!answer.ok) throw new Error(`not answered: ${answer.missing.join(' ')}`);
  return answer;
};
const check = { kind: 'connector', low: null, high: null, choices: [], passing: [], pinTable: 'usb-type-c' };

describe('what there is to probe', () => {
  // 24 contacts and 30 neighbouring pairs of different nets: counted from the receptacle's pin names (ST UM2191).
  test('USB Type-C: 24 pins, 30 pairs that must be open, 4 that may be joined', () => {
    const probes = probesOf(usbTypeC);
    expect(probes.filter((probe) => probe.kind === 'pin')).toHaveLength(24);
    expect(probes.filter((probe) => probe.kind === 'pair' && !probe.mayBeJoined)).toHaveLength(30);
    expect(probes.filter((probe) => probe.mayBeJoined).map((probe) => probe.key)).toEqual([
      'A1:B12',
      'A4:B9',
      'A9:B4',
      'A12:B1',
    ]);
  });

  test('an unused pin is not followed, but its neighbours are probed', () => {
    expect(probesOf(midiDin5).map((probe) => probe.key)).toEqual(['4', '2', '5', '1:4', '4:2', '2:5', '5:3']);
  });

  test('keys are one to a probe on every shipped connector', () => {
    for (const table of PIN_TABLES) {
      const keys = probesOf(table).map((probe) => probe.key);
      expect(new Set(keys).size).toBe(keys.length);
    }
  });
});

describe('a connector sheet', () => {
  test.each(PIN_TABLES.map((table) => [table.name, table] as const))(
    '%s passes when all is right',
    (_, table) => {
      expect(judged(table)).toMatchObject({ isPassed: true });
    },
  );

  test('one fault of any probe fails it, and the fault is named', () => {
    for (const probe of probesOf(usbTypeC).filter((each) => !each.mayBeJoined)) {
      const answer = judged(usbTypeC, { [probe.key]: probe.kind === 'pin' ? 'broken' : 'joined' });
      expect(answer.isPassed).toBe(false);
      expect(probeFaults(answer.probes)).toEqual([
        probe.kind === 'pin' ? `${probe.what} is not continuous` : `${probe.what} read joined`,
      ]);
    }
  });

  test('a probe that was not reached proves nothing', () => {
    const answer = judged(usbMicroB, { '2:3': 'not-reached', '4': 'not-reached' });
    expect(answer.isPassed).toBe(false);
    expect(probeFaults(answer.probes)).toEqual(['4 ID was not reached', '2 D- and 3 D+ were not reached']);
    expect(probesLine(answer.probes)).toBe('4 of 5 pins through, 3 of 4 pairs open');
  });

  test('a pin that a sound unit has no circuit for fails nothing, and is named', () => {
    const answer = judged(usbMicroB, { '4': 'no-circuit' });
    expect(answer.isPassed).toBe(true);
    expect(probesLines(answer.probes)).toEqual([
      '4 pins through, 4 pairs open',
      'no circuit in this unit: 4 ID',
    ]);
  });

  test('a sheet on which no pin is through proves nothing', () => {
    const none = Object.fromEntries(['1', '2', '3', '4', '5'].map((pin) => [pin, 'no-circuit']));
    expect(judged(usbMicroB, none).isPassed).toBe(false);
    expect(judged(usbMicroB, { ...none, '5': 'through' }).isPassed).toBe(true);
  });

  test.each(['open', 'joined', 'not-reached'])('a pair of one net may read %s', (read) => {
    const answer = judged(dcJack21, { '2:3': read });
    expect(answer).toMatchObject({ isPassed: true });
    expect(probesLine(answer.probes)).toBe('3 pins through, 2 pairs open');
    expect(answer.probes.find((probe) => probe.key === '2:3')).toMatchObject({ read });
  });

  test.each([
    { name: 'no answer', given: undefined },
    { name: 'an answer of the other kind', given: 'open' },
    { name: 'an unknown answer', given: 'fine' },
  ])('a pin with $name is asked for again', ({ given }) => {
    const answers = allGood(usbMicroB);
    if (given === undefined) answers.delete('3');
    else answers.set('3', given);
    expect(judgeProbes(usbMicroB, answers)).toEqual({ ok: false, missing: ['3'] });
  });

  test('answers to pins the connector does not have are not kept', () => {
    expect(judged(usbMicroB, { Z9: 'through' }).probes).toHaveLength(9);
  });
});

describe('its entry', () => {
  test('is judged by the table that the check names', () => {
    const answer = evaluateEntry(check, { probes: allGood(usbTypeC) });
    expect(answer).toMatchObject({ ok: true, isPassed: true, reading: null, choice: null });
    expect(evaluateEntry({ ...check, pinTable: 'gone' }, { probes: allGood(usbTypeC) })).toEqual({
      ok: false,
      problem: 'no-pin-table',
    });
    expect(evaluateEntry(check, {})).toMatchObject({ problem: 'missing-probes' });
    expect(
      evaluateEntry({ ...check, pinTable: 'own' }, { probes: allGood(usbMicroB) }, usbMicroB),
    ).toMatchObject({ isPassed: true });
  });

  test('reads in one line with its faults, and back from where it is stored', () => {
    const { probes } = judged(usbTypeC, { 'A4:A5': 'joined' });
    const stored: unknown = JSON.parse(JSON.stringify(probes));
    expect(readKeptProbes(stored)).toEqual(probes);
    expect(entryText({ isPassed: false, reading: null, choice: null, probes: stored }, null)).toBe(
      '24 pins through, 29 of 30 pairs open; A4 VBUS and A5 CC1 read joined',
    );
    expect(() => readKeptProbes([{ key: 'A4' }])).toThrow();
  });

  test('other kinds read as before', () => {
    expect(entryText({ isPassed: true, reading: 4.98, choice: null }, 'V')).toBe('4.98 V');
    expect(entryText({ isPassed: true, reading: 200, isOverRange: true, choice: null }, 'MΩ')).toBe(
      '>200 MΩ',
    );
    expect(entryText({ isPassed: false, reading: null, choice: null }, null)).toBe('not done');
    expect(limitsText({ ...check, unit: null })).toBe('every pin and pair');
  });
});

test('what a reading says of the connector', () => {
  const pair = { mayBeJoined: false };
  expect(standingOf(pair, undefined)).toBe('none');
  expect(standingOf(pair, 'open')).toBe('good');
  expect(standingOf(pair, 'joined')).toBe('bad');
  expect(standingOf({ mayBeJoined: true }, 'joined')).toBe('free');
  expect(standingOf(pair, 'no-circuit')).toBe('unused');
});
