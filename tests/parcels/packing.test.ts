import { describe, expect, test } from 'vitest';
import { batteryVerdict } from '@/lib/parcels/rules/battery';
import { verdictOnAnswer } from '@/lib/parcels/rules/battery-answers';
import { type PackingFacts, packingAdvice } from '@/lib/parcels/rules/packing';

const lithium = { battery: 'lithium-ion', wattHours: 9.25 } as const;
const facts: PackingFacts = {
  unit: 'field recorder',
  jobKind: 'repair',
  sentAlong: ['carry case'],
  accessories: ['carry case', 'wind shield'],
  battery: 'lithium-ion',
  verdict: verdictOnAnswer(lithium, 'healthy'),
  weightGrams: 480,
  isMainsPowered: false,
};

describe('the packing slip', () => {
  test('names what to send and what to keep', () => {
    const advice = packingAdvice(facts);
    expect(advice.include).toContain('carry case');
    expect(advice.leaveOut).toContain('wind shield');
    expect(advice.leaveOut).not.toContain('carry case');
  });

  test('asks for the battery to stay fitted, and for a low charge', () => {
    const text = packingAdvice(facts).pack.join(' ');
    expect(text).toContain('Leave the battery fitted');
    expect(text).toContain('30 %');
  });

  test('says nothing of a fitted battery once it was taken out', () => {
    const advice = packingAdvice({ ...facts, verdict: verdictOnAnswer(lithium, 'none') });
    expect(advice.pack.join(' ')).not.toContain('battery');
    expect(advice.leaveOut).toContain('The battery you took out, and any spare one');
  });

  test('asks for the mark only where it is needed', () => {
    const marked = batteryVerdict({ ...lithium, packing: 'in-unit', condition: 'healthy', batteries: 5 });
    expect(packingAdvice(facts).outside.join(' ')).not.toContain('mark');
    expect(packingAdvice({ ...facts, verdict: marked }).outside.join(' ')).toContain('lithium battery mark');
  });

  test('a claim brings its certificate', () => {
    expect(packingAdvice({ ...facts, jobKind: 'claim' }).include.join(' ')).toContain('certificate');
  });

  test('a heavy unit gets a stronger box', () => {
    expect(packingAdvice({ ...facts, weightGrams: 3001 }).pack.join(' ')).toContain('double-wall');
  });

  test('is never made for a battery that must not be posted', () => {
    expect(() => packingAdvice({ ...facts, verdict: verdictOnAnswer(lithium, 'swollen') })).toThrow(
      RangeError,
    );
  });
});
