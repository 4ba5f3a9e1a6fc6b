import { beforeEach, describe, expect, test } from 'vitest';
import { recordChecks } from '@/lib/bench/record-check';
import { recordWire } from '@/lib/bench/record-wire';
import { entryText } from '@/lib/bench/rules/entry-text';
import { minutesByPerson } from '@/lib/bench/rules/minutes-by';
import { usbMicroB } from '@/lib/bench/rules/pin-tables/usb-micro-b';
import { probesOf, readsOf } from '@/lib/bench/rules/probes';
import { wireSentence, wireVerdict, wireWords } from '@/lib/bench/rules/wire-verdict';
import { workCautions } from '@/lib/bench/rules/work-cautions';
import { retirePinTable, savePinTable } from '@/lib/bench/save-pin-table';
import { db } from '@/lib/db/client';
import { factsOf } from '@/lib/jobs/facts';
import { recordWork } from '@/lib/jobs/record-work';
import { useDatabase } from '@/tests/database';
import { assessedJob, takeMove } from '@/tests/makers/course';
import { jobNow } from '@/tests/makers/walk';
import { BENCH, makeWorkshop } from '@/tests/makers/workshop';
import { madeOnce } from '@/tests/world/made-once';

const now = new Date('2026-11-25T09:00:00Z');

describe('what a jumper wire should read', () => {
  // 1/58 ohm mm2/m of annealed copper at 20 °C (IEC 60028): 30 mm of 0.1 mm wire is 65.9 milliohm; two joints of 10 each are common practice.
  test.each([
    { milliohms: 70, verdict: 'sound' },
    { milliohms: 85.9, verdict: 'sound' },
    { milliohms: 86, verdict: 'too-high' },
    { milliohms: 310, verdict: 'too-high' },
    { milliohms: 40, verdict: 'too-low' },
    // A fifth below the copper: 65.9 - 13.18 = 52.72.
    { milliohms: 52.7, verdict: 'too-low' },
    { milliohms: 52.8, verdict: 'sound' },
  ])('$milliohms milliohm across 30 mm of 0.1 mm wire is $verdict', ({ milliohms, verdict }) => {
    const found = wireVerdict({ lengthMm: 30, diameterUm: 100, milliohms });
    expect(found).toEqual({ wire: 65.9, most: 85.9, verdict });
    expect(wireSentence(found)).toContain('65.9 mΩ at 20 °C');
  });

  test('a short thick wire may read almost nothing', () => {
    expect(wireVerdict({ lengthMm: 5, diameterUm: 500, milliohms: 0 }).verdict).toBe('sound');
  });

  test('reads on one line', () => {
    expect(wireWords({ fromPoint: 'R12', toPoint: 'A6', lengthMm: 30, diameterUm: 100 })).toBe(
      'R12 to A6, 30 mm of 0.1 mm wire',
    );
  });
});

describe('cautions where the work is', () => {
  const facts = { battery: 'none', isMainsPowered: false, words: [], onSheet: [] };
  test.each([
    { name: 'any unit', over: {}, cautions: ['static'] },
    { name: 'a lithium cell', over: { battery: 'lithium-ion' }, cautions: ['lithium-cells', 'static'] },
    { name: 'a button cell', over: { battery: 'button-cell' }, cautions: ['static'] },
    {
      name: 'the mains',
      over: { isMainsPowered: true },
      cautions: ['mains-capacitors', 'mains-test', 'static'],
    },
    { name: 'a socket', over: { words: ['USB-C socket replaced'] }, cautions: ['hot-air', 'static'] },
    { name: 'liquid', over: { words: ['Cleaned after liquid'] }, cautions: ['solvents', 'static'] },
    {
      name: 'thermal metal',
      over: { words: ['Thermal metal renewed'] },
      cautions: ['static', 'liquid-metal'],
    },
    { name: 'the sheet', over: { onSheet: ['solvents', null, 'gone'] }, cautions: ['solvents', 'static'] },
  ])('$name', ({ over, cautions }) => {
    expect(workCautions({ ...facts, ...over })).toEqual(cautions);
  });
});

test('minutes are summed by who worked', () => {
  const work = [
    { userId: 'b', minutes: 10 },
    { userId: 'a', minutes: 30 },
    { userId: 'a', minutes: 15 },
  ];
  expect(minutesByPerson(work)).toEqual([
    { userId: 'a', minutes: 45, entries: 2 },
    { userId: 'b', minutes: 10, entries: 1 },
  ]);
});

describe('on a job', () => {
  let world: Awaited<ReturnType<typeof makeWorkshop>>;
  let jobId = '';
  useDatabase();
  const begin = madeOnce(async () => {
    const world = await makeWorkshop(now);
    const jobId = await assessedJob(world, now);
    return { world, jobId };
  });
  beforeEach(async () => {
    ({ world, jobId } = await begin());
  }, 30_000);

  const wire = { fromPoint: 'R12', toPoint: 'A6', lengthMm: 30, diameterUm: 100, milliohms: 78 };
  const proving = async () => {
    await takeMove(jobId, 'start-bench', now);
    await recordWork({ jobId, text: 'Socket replaced', minutes: 40, actor: BENCH, now });
    await takeMove(jobId, 'prove', now);
  };
  const addConnector = async (pinTable: string) => {
    const { sheetId } = await db.job.findUniqueOrThrow({ where: { id: jobId } });
    const data = { sheetId, position: 9, kind: 'connector', label: 'Connector', pinTable };
    return (await db.check.create({ data, select: { id: true } })).id;
  };
  const sound = () => new Map(probesOf(usbMicroB).map((probe) => [probe.key, String(readsOf(probe)[0])]));

  test('a wire is kept once, with a line in the history', async () => {
    const formKey = '0199b3a2-0000-7000-8000-000000000001';
    await recordWire({ jobId, wire, formKey, actor: BENCH, now });
    await recordWire({ jobId, wire, formKey, actor: BENCH, now });
    const job = await jobNow(jobId);
    expect(job.jumperWires).toMatchObject([wire]);
    expect(job.events.filter((event) => event.kind === 'wire-recorded')).toHaveLength(1);
  });

  test('a reading that no wire has is refused', async () => {
    const work = recordWire({ jobId, wire: { ...wire, milliohms: 1e6 }, actor: BENCH, now });
    await expect(work).rejects.toMatchObject({ field: 'reading' });
  });

  test('a failed connector keeps the job from being proved until it is done again, and both stay', async () => {
    await proving();
    const checkId = await addConnector('usb-micro-b');
    const enter = (over: [string, string][] = []) =>
      recordChecks({
        jobId,
        actor: BENCH,
        now,
        results: [{ checkId, given: { probes: new Map([...sound(), ...over]) }, note: '' }],
      });
    expect(await enter([['4:5', 'joined']])).toEqual([false]);
    expect(factsOf(await jobNow(jobId))).toMatchObject({ checksFailed: 1, checksMissing: 2 });
    expect(await enter()).toEqual([true]);
    const job = await jobNow(jobId);
    expect(factsOf(job)).toMatchObject({ checksFailed: 0, checksMissing: 2 });
    expect(job.checkEntries.map((entry) => entry.isPassed)).toEqual([false, true]);
    expect(job.checkEntries[0]?.probes).toContainEqual(
      expect.objectContaining({ key: '4:5', what: '4 ID and 5 GND', read: 'joined' }),
    );
  });

  test('a connector with unanswered probes is refused by their names', async () => {
    await proving();
    const checkId = await addConnector('usb-micro-b');
    const probes = sound();
    probes.delete('2:3');
    await expect(
      recordChecks({ jobId, actor: BENCH, now, results: [{ checkId, given: { probes }, note: '' }] }),
    ).rejects.toMatchObject({ field: 'probes', message: expect.stringContaining('2:3') });
    expect(await db.checkEntry.count()).toBe(0);
  });

  test('a sheet keeps its own pin table when a new one takes its place', async () => {
    const input = { name: 'Case plug', source: 'measured', text: '1 plus\n2 minus' };
    const by = { userId: BENCH.id, now };
    const old = await savePinTable({ input, replaces: null, ...by });
    const next = await savePinTable({
      input: { ...input, text: '1 plus\n2 minus\n3 data' },
      replaces: old,
      ...by,
    });
    expect(await db.pinTable.findUnique({ where: { id: old } })).toMatchObject({
      text: input.text,
      retiredAt: now,
    });
    await expect(savePinTable({ input, replaces: old, ...by })).rejects.toMatchObject({ code: 'conflict' });
    await retirePinTable({ id: next, now });
    await proving();
    const checkId = await addConnector(old);
    const given = {
      probes: new Map([
        ['1', 'through'],
        ['2', 'through'],
        ['1:2', 'open'],
      ]),
    };
    expect(await recordChecks({ jobId, actor: BENCH, now, results: [{ checkId, given, note: '' }] })).toEqual(
      [true],
    );
    await expect(
      savePinTable({ input: { ...input, text: '1 plus' }, replaces: null, ...by }),
    ).rejects.toMatchObject({
      field: 'text',
    });
  });

  test('checks are entered together or not at all, and a second press adds nothing', async () => {
    await proving();
    const entryId = '0199b3a2-0000-7000-8000-000000000002';
    const volts = { checkId: world.voltage, given: { reading: 5 }, note: '', entryId };
    const enter = (results: Parameters<typeof recordChecks>[0]['results']) =>
      recordChecks({ jobId, actor: BENCH, now, results, hasManyFields: true });
    await expect(enter([volts, { checkId: world.tilt, given: {}, note: '' }])).rejects.toMatchObject({
      field: `tick-${world.tilt}`,
    });
    expect(await db.checkEntry.count()).toBe(0);
    expect(await enter([volts])).toEqual([true]);
    await enter([volts]);
    expect(await db.checkEntry.count()).toBe(1);
    // A page that lost its answer brings along what it had entered; what is new in it counts all the same.
    const tilt = {
      checkId: world.tilt,
      given: { tick: false },
      note: '',
      entryId: `${entryId.slice(0, -1)}4`,
    };
    expect(await enter([volts, tilt])).toEqual([true, false]);
    expect(await db.checkEntry.count()).toBe(2);
  });

  test('a reading over the range passes a minimum and is kept as one; a range too short is refused', async () => {
    await proving();
    await db.check.update({ where: { id: world.voltage }, data: { low: 2, high: null, unit: 'MΩ' } });
    const enter = (reading: number) =>
      recordChecks({
        jobId,
        actor: BENCH,
        now,
        results: [{ checkId: world.voltage, given: { reading, isOverRange: true }, note: '' }],
      });
    await expect(enter(1)).rejects.toMatchObject({ field: 'reading' });
    expect(await enter(200)).toEqual([true]);
    const [entry] = (await jobNow(jobId)).checkEntries;
    expect(entry && entryText(entry, 'MΩ')).toBe('>200 MΩ');
    const broken = db.checkEntry.updateMany({ data: { reading: null } });
    await expect(broken).rejects.toThrow(/check_entry_over_range/);
  });

  test('of two readings in one instant the later one counts, whichever row is found first', async () => {
    await proving();
    const enter = (volts: number, entryId: string) =>
      recordChecks({
        jobId,
        actor: BENCH,
        now,
        results: [{ checkId: world.voltage, given: { reading: volts }, note: '', entryId }],
      });
    // Keys of the form, as a page drawn later gives them; the later reading is written first here.
    await enter(5, '0199b3a2-0001-7000-8000-000000000009');
    await enter(9, '0199b3a2-0000-7000-8000-000000000008');
    const job = await jobNow(jobId);
    expect(job.checkEntries.map((entry) => entry.reading)).toEqual([9, 5]);
    expect(factsOf(job).checksFailed).toBe(0);
  });
});
