import { describe, expect, test } from 'vitest';
import {
  askCarrier,
  CARRIERS,
  type Carrier,
  findCarrier,
  trackingAddress,
} from '@/lib/parcels/rules/carriers';
import { chargeableWeight, volumetricWeight } from '@/lib/parcels/rules/weight';

function carrierOf(key: string): Carrier {
  const carrier = findCarrier(key);
  if (!carrier) throw new Error(`no carrier ${key}`);
  return carrier;
}

const post = carrierOf('sandmouth-post');
const road = carrierOf('fenroad');
const small = { sides: [300, 200, 150], weight: 900, valueMinor: 20_000, battery: { may: 'post' } } as const;

describe('what a carrier says to a parcel', () => {
  test('takes a small sound one, charged by the greater of scale and volume', () => {
    expect(askCarrier(post, small)).toEqual({ carrier: post, chargeable: 1500, problems: [] });
  });

  test.each([
    { name: 'heavy', change: { weight: 20_001 }, problem: 'too-heavy' },
    { name: 'long', change: { sides: [1001, 100, 100] as const }, problem: 'too-long' },
    { name: 'dear', change: { valueMinor: 50_001 }, problem: 'worth-too-much' },
    {
      name: 'loose battery',
      change: { battery: { may: 'road-only' } as const },
      problem: 'battery-by-road-only',
    },
    {
      name: 'damaged battery',
      change: { battery: { may: 'do-not-post' } as const },
      problem: 'battery-not-posted',
    },
  ])('$name: $problem', ({ change, problem }) => {
    expect(askCarrier(post, { ...small, ...change }).problems).toEqual([problem]);
  });

  test('limits are inclusive', () => {
    const atLimit = { ...small, weight: 20_000, valueMinor: 50_000, sides: [1000, 10, 10] as const };
    expect(askCarrier(post, atLimit).problems).toEqual([]);
  });

  test('a road carrier takes a loose battery, and nobody takes a damaged one', () => {
    expect(askCarrier(road, { ...small, battery: { may: 'road-only' } }).problems).toEqual([]);
    for (const carrier of CARRIERS) {
      expect(askCarrier(carrier, { ...small, battery: { may: 'do-not-post' } }).problems).toContain(
        'battery-not-posted',
      );
    }
  });
});

describe('the page of a carrier on a parcel', () => {
  test('is made from its template, with the reference made safe', () => {
    expect(trackingAddress('Sandmouth Post', 'RR 4731/2482 9GB')).toBe(
      'https://post.example.org/follow/RR4731%2F24829GB',
    );
  });

  test.each([
    ['Fenroad Carriers', 'A1'],
    ['Somebody else', 'A1'],
    ['Sandmouth Post', '  '],
  ])('%s with reference "%s" has none', (carrier, reference) => {
    expect(trackingAddress(carrier, reference)).toBeNull();
  });
});

test('a carrier is found by key or name, in any case', () => {
  expect(findCarrier(' TERN & TIDE PARCELS ')?.key).toBe('tern-and-tide');
  expect(findCarrier('tern-and-tide')?.name).toBe('Tern & Tide Parcels');
});

test('a weight that fits the step exactly is not rounded up', () => {
  expect(chargeableWeight({ sides: [10, 10, 10], weight: 1500 }, post.volume)).toBe(1500);
  expect(chargeableWeight({ sides: [10, 10, 10], weight: 1501 }, post.volume)).toBe(2000);
});

test.each([0, -5, 1.5, Number.NaN])('a side of %d is refused', (side) => {
  expect(() => volumetricWeight([side, 10, 10], post.volume)).toThrow(RangeError);
});
