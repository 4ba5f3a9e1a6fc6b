import { describe, expect, test } from 'vitest';
import { packingSlip } from '@/lib/jobs/rules/packing-slip';
import { postedAnswer } from '@/lib/jobs/rules/posted-answer';
import { STAGES } from '@/lib/jobs/rules/stages';
import { packingAdvice } from '@/lib/parcels/rules/packing';

const lithium = { battery: 'lithium-ion', batteryWh: 9.6 };

describe('a packing slip', () => {
  test('is there only while the unit is still to be posted', () => {
    const offered = STAGES.filter(
      (stage) => packingSlip({ stage, batteryAnswer: 'healthy', model: lithium }).isOffered,
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
    const slip = packingSlip({ stage: 'booked', batteryAnswer: answer, model });
    expect(slip.isOffered).toBe(isOffered);
    // What the slip is drawn from refuses what has none, and nothing else.
    const draw = () =>
      packingAdvice({
        unit: 'Tideline Gull',
        jobKind: 'repair',
        sentAlong: [],
        accessories: [],
        battery: 'lithium-ion',
        verdict: postedAnswer(model, answer),
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
