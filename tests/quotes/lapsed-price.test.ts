import { describe, expect, it } from 'vitest';
import { lapsedPrice } from '@/lib/quotes/rules/lapsed-price';

const price = (revision: number, state: string) => ({ revision, state });
const PRICES = [price(1, 'accepted'), price(2, 'lapsed')];
const event = (kind: string, toStage: string | null = null, data: unknown = {}) => ({ kind, toStage, data });
const lapse = event('offer-lapsed', 'assessing', { revision: 2 });
const asked = event('moved', 'awaiting-approval', { move: 'ask-approval' });

describe('a price that lapsed, and whose answer may have come in time', () => {
  it.each([
    ['just lapsed', [asked, lapse]],
    ['with the promise moved by it', [asked, lapse, event('promise-moved')]],
    ['gone on with at the price before', [asked, lapse, event('moved', 'on-bench', { move: 'start-bench' })]],
    ['ready at the price before', [asked, lapse, event('moved', 'ready', { move: 'pass-checks' })]],
    ['after a ruling that it came with', [event('claim-ruled'), asked, lapse]],
  ])('%s', (_name, events) => {
    expect(lapsedPrice(PRICES, events)?.revision).toBe(2);
  });

  it.each([
    'withdrawn',
    'repair-stopped',
    'repair-changed',
    'claim-ruled',
    'claim-contested',
    'claim-reopened',
    'sent-back',
  ])('is overtaken by %s', (kind) => {
    expect(lapsedPrice(PRICES, [asked, lapse, event(kind)])).toBeNull();
  });

  it.each([
    ['a newer one, though nobody was asked', [...PRICES, price(3, 'sent')]],
    ['what is owed instead', [price(1, 'replaced'), price(2, 'lapsed'), price(3, 'accepted')]],
    ['its own answer', [price(1, 'replaced'), price(2, 'accepted')]],
    ['a newer one, in whatever order they come', [price(3, 'replaced'), ...PRICES]],
  ])('is overtaken by %s', (_name, prices) => {
    expect(lapsedPrice(prices, [asked, lapse])).toBeNull();
  });

  it('is none where nobody was asked, nor where nothing lapsed', () => {
    expect(lapsedPrice(PRICES, [{ ...lapse, toStage: null }])).toBeNull();
    expect(lapsedPrice(PRICES, [asked])).toBeNull();
    expect(lapsedPrice([], [asked, lapse])).toBeNull();
  });
});
