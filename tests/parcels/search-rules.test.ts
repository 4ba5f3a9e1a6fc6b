import { describe, expect, it } from 'vitest';
import { parcelSearch } from '@/lib/jobs/rules/newest-search';
import { maySeek } from '@/lib/jobs/rules/parcel-search';

describe('a parcel may be looked for', () => {
  const facts = { isWithCarrier: true, isSought: false, isErased: false };
  it.each([
    ['while a carrier has it', {}, null],
    ['not where its customer collected it, or it is here', { isWithCarrier: false }, 'no-carrier'],
    ['not twice at once', { isSought: true }, 'sought-already'],
    ['not where nobody can be told', { isErased: true }, 'erased'],
  ] as const)('%s', (_, o, reason) => {
    expect(maySeek({ ...facts, ...o })).toEqual(
      reason === null ? { allowed: true } : { allowed: false, reason },
    );
  });
});

describe('how the newest search stands', () => {
  const SOUGHT = { kind: 'parcel-sought', data: { note: 'They look.' } };
  const LOST = { kind: 'search-ended', data: { how: 'lost', note: 'We pay.' } };
  const WRITTEN = { kind: 'message-sent', data: { messageId: 'm', author: 'customer' } };
  const BACK = { kind: 'came-back', data: { carrier: 'P', reference: '1', reason: 'Torn.' } };
  it.each([
    ['none was begun', [WRITTEN], null],
    ['it goes on, whatever is written', [SOUGHT, WRITTEN], { state: 'sought', note: 'They look.' }],
    ['it ended', [SOUGHT, LOST], { state: 'lost', note: 'We pay.' }],
    ['it began again after it ended', [SOUGHT, LOST, SOUGHT], { state: 'sought', note: 'They look.' }],
    ['the parcel came back, sought or given up', [SOUGHT, LOST, BACK], null],
  ])('%s', (_, events, stands) => {
    expect(parcelSearch(events)).toEqual(stands);
  });
});
