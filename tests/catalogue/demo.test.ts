import { describe, expect, test } from 'vitest';
import { isCautionKey } from '@/lib/bench/rules/cautions';
import { checkProblems } from '@/lib/bench/rules/check-problems';
import { exponentOf } from '@/lib/money/currency';
import { checkSerial, isSerialPattern } from '@/lib/numbers/serial';
import { verdictOnAnswer } from '@/lib/parcels/rules/battery-answers';
import { termsProblems } from '@/lib/warranty/rules/terms';
import { DEMO_FAMILIES, DEMO_MODELS, DEMO_PARTS, DEMO_POLICIES, DEMO_REPAIRS } from '@/prisma/demo/catalogue';
import { demoId } from '@/prisma/demo/demo-id';

test('Quay & Alder has five families, fourteen models of four makers, and some thirty repairs', () => {
  expect(DEMO_FAMILIES).toHaveLength(5);
  expect(DEMO_MODELS).toHaveLength(14);
  expect(new Set(DEMO_MODELS.map((model) => model.maker)).size).toBe(4);
  expect(DEMO_REPAIRS.length).toBeGreaterThanOrEqual(32);
  expect(exponentOf('GBP')).toBe(2);
});

test.each(DEMO_MODELS)('$maker $name: its example serial fits its own pattern and check', (model) => {
  expect(isSerialPattern(model.serialPattern)).toBe(true);
  expect(checkSerial(model.serialExample, { pattern: model.serialPattern, rule: model.serialRule })).toEqual({
    ok: true,
  });
});

test('every sound unit of the catalogue may be posted', () => {
  for (const model of DEMO_MODELS) {
    expect(verdictOnAnswer({ battery: model.battery, wattHours: model.batteryWh }, 'healthy').may).toBe(
      'post',
    );
  }
});

test('every policy can be used', () => {
  for (const policy of DEMO_POLICIES) expect(termsProblems(policy.terms)).toEqual([]);
});

describe.each(DEMO_REPAIRS)('$key', (repair) => {
  test('stands on a model, a policy and parts that exist, under an address of its own', () => {
    expect(DEMO_MODELS.some((model) => model.id === repair.modelId)).toBe(true);
    expect(DEMO_POLICIES.some((policy) => policy.id === repair.policyId)).toBe(true);
    for (const [code] of repair.parts) expect(DEMO_PARTS.some((part) => part.code === code)).toBe(true);
    expect(DEMO_REPAIRS.filter((other) => other.id === repair.id)).toHaveLength(1);
    expect(repair.symptoms.length).toBeGreaterThan(1);
  });

  test('has check sheets that can fail and name known cautions', () => {
    for (const sheet of repair.sheets) {
      expect(sheet.checks.length).toBeGreaterThan(2);
      for (const check of sheet.checks) {
        expect(checkProblems(check)).toEqual([]);
        if (check.caution !== null) expect(isCautionKey(check.caution)).toBe(true);
      }
    }
  });
});

test('a fixed id is the same each time and fits the form of a UUID', () => {
  expect(demoId('repair', 'gull/usb-socket')).toBe(demoId('repair', 'gull/usb-socket'));
  for (const { id } of [...DEMO_REPAIRS, ...DEMO_MODELS, ...DEMO_PARTS]) {
    expect(id).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-8[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
  }
});
