import { describe, expect, test } from 'vitest';
import { packingSlip } from '@/lib/jobs/rules/packing-slip';
import { postedAnswer } from '@/lib/jobs/rules/posted-answer';
import { STAGES } from '@/lib/jobs/rules/stages';
import { LOCAL_RULES_FIRST } from '@/lib/parcels/rules/battery';
import { packingAdvice } from '@/lib/parcels/rules/packing';

const lithium = { battery: 'lithium-ion', batteryWh: 9.6 };

describe('a packing slip', () => {
  test('is there only while the unit is still to be posted', () => {
    const offered = STAGES.filter(
      (stage) => packingSlip({ stage, batteryAnswer: 'healthy', model: lithium }, []).isOffered,
    );
    expect(offered).toEqual(['booked']);
  });

  test.each([
    { name: 'a sound battery', answer: 'healthy', model: lithium, isOffered: true },
    {
      name: 'a unit without one',
      answer: 'unknown',
      model: { battery: 'none', batteryWh: null },
      isOffered: true,
    },
    { name: 'one that nobody can judge', answer: 'unknown', model: lithium, isOffered: false },
    { name: 'a swollen one', answer: 'swollen', model: lithium, isOffered: false },
    {
      name: 'one of a size nobody knows any more',
      answer: 'healthy',
      model: { ...lithium, batteryWh: null },
      isOffered: false,
    },
  ])('of $name: $isOffered', ({ answer, model, isOffered }) => {
    const slip = packingSlip({ stage: 'booked', batteryAnswer: answer, model }, []);
    expect(slip.isOffered).toBe(isOffered);
    // What the slip is drawn from refuses what has none, and nothing else.
    const draw = () =>
      packingAdvice({
        unit: 'Tideline Gull',
        jobKind: 'repair',
        sentAlong: [],
        accessories: [],
        battery: 'lithium-ion',
        verdict: postedAnswer(model, answer, []),
        weightGrams: 0,
        isMainsPowered: false,
      });
    if (isOffered) expect(draw().include.length).toBeGreaterThan(0);
    else expect(draw).toThrow('must not be posted');
    if (!slip.isOffered) {
      expect(slip.stop?.reasons.length).toBeGreaterThan(0);
      expect(slip.stop?.insteadSteps.length).toBeGreaterThan(0);
    }
  });
});

describe('a unit with a cell of ours that is in doubt', () => {
  const CELL = ['Lithium-ion cell, 2.5 Ah, lot L-2611'];
  const slip = (answer: string, model: { battery: string; batteryWh: number | null } = lithium) =>
    packingSlip({ stage: 'booked', batteryAnswer: answer, model }, CELL);

  test.each(['healthy', 'weak', 'unknown', 'recalled', 'swollen', 'leaking', 'hot', 'wet', 'not an answer'])(
    'is not posted, though the battery was told as %s',
    (answer) => {
      const told = slip(answer);
      expect(told.isOffered ? null : told.stop?.insteadSteps.join(' ')).toContain('Do not post it');
      expect(told.isOffered ? null : told.stop?.reasons.at(-1)).toBe(LOCAL_RULES_FIRST);
    },
  );

  test('is told which cell, and that putting it right is free', () => {
    const told = slip('healthy');
    const stop = told.isOffered ? null : told.stop;
    expect(stop?.reasons[0]).toContain(CELL[0]);
    expect(stop?.insteadSteps.at(-1)).toContain('cost you nothing');
  });

  test.each([
    {
      name: 'without a battery by the catalogue',
      model: { battery: 'none', batteryWh: null },
      answer: 'none',
    },
    { name: 'with a button cell', model: { battery: 'button-cell', batteryWh: null }, answer: 'healthy' },
  ])('is not posted where it is one $name', ({ model, answer }) => {
    expect(slip(answer, model).isOffered).toBe(false);
  });

  test('may come without its battery, once that was taken out', () => {
    expect(slip('none').isOffered).toBe(true);
  });
});
