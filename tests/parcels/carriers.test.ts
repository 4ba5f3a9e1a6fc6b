import { describe, expect, test } from 'vitest';
import { problemSentences, unsaidSentence } from '@/lib/parcels/rules/carrier-sentences';
import {
  askCarrier,
  type Carrier,
  findCarrier,
  isTrackingTemplate,
  trackingAddress,
  transitDays,
} from '@/lib/parcels/rules/carriers';
import { chargeableWeight, volumetricWeight } from '@/lib/parcels/rules/weight';
import { DEMO_CARRIERS } from '@/prisma/demo/carriers';

const [post, parcels, road]: readonly [Carrier, Carrier, Carrier] = DEMO_CARRIERS;
const money = { currency: 'GBP', locale: 'en-GB' };
const small = { sides: [300, 200, 150], weight: 900, valueMinor: 20_000, battery: { may: 'post' } } as const;

describe('what a carrier says to a parcel', () => {
  test('takes a small sound one, charged by the greater of scale and volume', () => {
    expect(askCarrier(post, small)).toEqual({
      carrier: post,
      chargeable: 1500,
      byVolume: 1500,
      problems: [],
      unsaid: [],
    });
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
    for (const carrier of DEMO_CARRIERS) {
      expect(askCarrier(carrier, { ...small, battery: { may: 'do-not-post' } }).problems).toContain(
        'battery-not-posted',
      );
    }
  });
});

describe('the page of a carrier on a parcel', () => {
  test('is made from its template, with the reference made safe', () => {
    expect(trackingAddress('Sandmouth Post', 'RR 4731/2482 9GB', DEMO_CARRIERS)).toBe(
      'https://post.example.org/follow/RR4731%2F24829GB',
    );
  });

  test.each([
    ['Fenroad Carriers', 'A1'],
    ['Somebody else', 'A1'],
    ['Sandmouth Post', '  '],
  ])('%s with reference "%s" has none', (carrier, reference) => {
    expect(trackingAddress(carrier, reference, DEMO_CARRIERS)).toBeNull();
  });
});

test('a reference with a dollar sign in it is put in as it is', () => {
  // String.replace reads $& in a text as "the whole match".
  expect(trackingAddress(post.name, '$&1', DEMO_CARRIERS)).toBe('https://post.example.org/follow/%24%261');
});

test.each([
  ['https://post.example.org/follow/{reference}', true],
  ['https://post.example.org/?r={reference}&x=1', true],
  ['http://post.example.org/{reference}', false],
  ['https://{reference}.example.org/', false],
  ['https://post.example.org/follow', false],
  ['https://post.example.org/{reference}/{reference}', false],
  ['javascript:alert({reference})', false],
  ['https://post example.org/{reference}', false],
])('the address %s as a template: %s', (text, isOne) => {
  expect(isTrackingTemplate(text)).toBe(isOne);
});

test.each([
  ['what is collected', { by: 'collected' } as const, 0],
  ['a parcel at home', { by: 'carrier', listed: parcels, isAbroad: false } as const, 3],
  ['the same carrier abroad', { by: 'carrier', listed: parcels, isAbroad: true } as const, 15],
  ['a carrier that is not listed', { by: 'carrier', listed: null, isAbroad: false } as const, 5],
  ['one that is not listed, abroad', { by: 'carrier', listed: null, isAbroad: true } as const, 20],
])('the longest usual way of %s', (_name, way, days) => {
  expect(transitDays(way)).toBe(days);
});

test('a carrier is found by its name, in any case', () => {
  expect(findCarrier(' TERN & TIDE PARCELS ', DEMO_CARRIERS)).toBe(parcels);
  expect(findCarrier('Somebody else', DEMO_CARRIERS)).toBeNull();
});

describe('a parcel that is not weighed, measured or valued yet', () => {
  const bare = { weight: null, sides: null, valueMinor: null, battery: { may: 'post' } } as const;

  test('breaks no limit, and what is missing is named', () => {
    const answer = askCarrier(post, bare);
    expect(answer).toMatchObject({ chargeable: null, byVolume: null, problems: [] });
    expect(unsaidSentence(answer.unsaid)).toBe('Not compared yet: weight, size and value.');
  });

  test('may still not fly with a loose battery', () => {
    expect(askCarrier(post, { ...bare, battery: { may: 'road-only' } }).problems).toEqual([
      'battery-by-road-only',
    ]);
  });
});

test('each reason names the limit it breaks', () => {
  const parcel = {
    weight: 20_001,
    sides: [1001, 100, 100],
    valueMinor: 50_001,
    battery: { may: 'road-only' },
  } as const;
  expect(problemSentences(askCarrier(post, parcel), money)).toEqual([
    'Too heavy: Sandmouth Post takes up to 20 kg.',
    'Too long: Sandmouth Post takes sides up to 100 cm.',
    'Worth too much: Sandmouth Post makes good up to £500.00.',
    'A battery outside its unit may not fly: Sandmouth Post does not keep parcels on the road.',
  ]);
});

test('a weight that fits the step exactly is not rounded up', () => {
  expect(chargeableWeight({ sides: [10, 10, 10], weight: 1500 }, post.volume)).toBe(1500);
  expect(chargeableWeight({ sides: [10, 10, 10], weight: 1501 }, post.volume)).toBe(2000);
});

test.each([0, -5, 1.5, Number.NaN])('a side of %d is refused', (side) => {
  expect(() => volumetricWeight([side, 10, 10], post.volume)).toThrow(RangeError);
});
