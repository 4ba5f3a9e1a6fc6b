import { expect, test } from 'vitest';
import { day, dayToDate } from '@/lib/calendar/day';
import { endedPrice, heldPrice } from '@/lib/jobs/rules/asked-price';
import { mayTakeBack, type TakeBackFacts } from '@/lib/jobs/rules/take-back';

const WORK: TakeBackFacts = {
  what: 'work',
  recordedBy: 'nils',
  who: { id: 'nils', isOwner: false },
  stage: 'on-bench',
  hasLeft: false,
  isRepaired: false,
  wasAsked: false,
  isOnly: true,
  isEvidence: false,
  isProofOfSerial: false,
};
const other = { id: 'ines', isOwner: false };
const owner = { id: 'odile', isOwner: true };

test.each<[string, Partial<TakeBackFacts>, string]>([
  ['one’s own work at the bench', {}, 'allowed'],
  ['somebody else’s', { who: other }, 'not-yours'],
  ['somebody else’s, by the owner', { who: owner }, 'allowed'],
  ['work of a unit that left', { hasLeft: true, isOnly: false }, 'left-before'],
  ['a wire of a unit that left', { what: 'wire', hasLeft: true }, 'left-before'],
  ['work of a job that closed without its unit leaving', { stage: 'closed', isOnly: false }, 'left-before'],
  ['a finding of such a job', { what: 'finding', stage: 'closed' }, 'allowed'],
  ['a finding of a unit that left', { what: 'finding', hasLeft: true }, 'allowed'],
  ['a photo of a unit that left', { what: 'photo', hasLeft: true }, 'allowed'],
  ['the only work of a unit that is proved', { stage: 'proving' }, 'only-work'],
  ['the only work of a unit that goes back repaired', { stage: 'ready', isRepaired: true }, 'only-work'],
  ['the only work of a unit that goes back unrepaired', { stage: 'ready' }, 'allowed'],
  ['other work of a unit that is proved', { stage: 'proving', isOnly: false }, 'allowed'],
  ['the only wire of a unit that is proved', { what: 'wire', stage: 'proving' }, 'allowed'],
  ['the only finding before a price', { what: 'finding' }, 'allowed'],
  ['the only finding of a price', { what: 'finding', wasAsked: true }, 'price-rests-on-it'],
  ['one finding of two of a price', { what: 'finding', wasAsked: true, isOnly: false }, 'allowed'],
  ['a photo in an inspection', { what: 'photo', isEvidence: true, who: owner }, 'evidence'],
  ['a finding with such a photo', { what: 'finding', isEvidence: true }, 'evidence'],
  ['the photo a serial was settled by', { what: 'photo', isProofOfSerial: true }, 'proof-of-serial'],
  ['a customer’s photo', { what: 'photo', recordedBy: null, who: owner }, 'from-the-customer'],
])('%s: %s', (_name, over, expected) => {
  const answer = mayTakeBack({ ...WORK, ...over });
  expect(answer.allowed ? 'allowed' : answer.reason).toBe(expected);
});

test('a finding that was taken back is no fault that was found since a price', () => {
  const at = new Date('2026-12-01T10:00:00Z');
  const event = (kind: string, data: unknown, toStage: string | null = null) => ({ kind, data, at, toStage });
  const asked = [
    event('offer-written', { revision: 2, gross: 6000 }),
    event('moved', { move: 'ask-approval' }, 'awaiting-approval'),
  ];
  const found = event('finding-recorded', { findingId: 'f' });
  const back = event('entry-taken-back', { what: 'finding', id: 'f', reason: 'Of another job.' });
  const revisions = [{ revision: 2, grossMinor: 6000, validUntil: dayToDate(day('2026-12-10')) }];
  const isFound = (...events: (typeof asked)[number][]) =>
    heldPrice({ events: [...asked, ...events], revisions, today: day('2026-12-02') })?.isFaultFound;
  expect(isFound()).toBe(false);
  expect(isFound(found)).toBe(true);
  expect(isFound(found, back)).toBe(false);
});

test.each([
  ['nobody answered it', 'message-sent', 6000],
  ['the customer contested the ruling it came with', 'claim-contested', undefined],
  ['the owner took that ruling back', 'claim-reopened', undefined],
  ['it was answered', 'offer-decided', undefined],
  ['its day passed', 'offer-lapsed', undefined],
])('what a price binds to, where %s', (_name, kind, gross) => {
  const at = new Date('2026-12-01T10:00:00Z');
  const event = (kind: string, data: unknown) => ({ kind, data, at, toStage: null });
  const events = [
    event('offer-written', { revision: 2, gross: 6000 }),
    event('moved', { move: 'ask-approval' }),
    event(kind, {}),
  ];
  const revisions = [{ revision: 2, grossMinor: 6000, validUntil: dayToDate(day('2026-12-10')) }];
  expect(heldPrice({ events, revisions, today: day('2026-12-02') })?.gross).toBe(gross);
});

test.each([
  ['none was written down to ask for', ['asked', 'lapsed'], null],
  ['it waits for an answer', ['written', 'asked'], null],
  ['its day passed', ['written', 'asked', 'lapsed'], { how: 'lapsed', reason: '' }],
  ['it was taken back', ['written', 'asked', 'back'], { how: 'taken-back', reason: 'A line was wrong.' }],
  ['it was written to since', ['written', 'asked', 'lapsed', 'message'], { how: 'lapsed', reason: '' }],
  ['the job went on since', ['written', 'asked', 'back', 'begun'], null],
  ['it was asked for anew', ['written', 'asked', 'back', 'written', 'asked'], null],
  ['nothing happened', [], null],
] as const)('the price that ended, where %s', (_name, names, expected) => {
  const kinds = {
    written: ['offer-written', { revision: 2, gross: 6000 }, null],
    asked: ['moved', { move: 'ask-approval' }, 'awaiting-approval'],
    lapsed: ['offer-lapsed', {}, 'assessing'],
    back: ['moved', { move: 'take-back-price', note: 'A line was wrong.' }, 'assessing'],
    begun: ['moved', { move: 'start-bench' }, 'on-bench'],
    message: ['message-sent', { messageId: 'm', author: 'staff' }, null],
  } as const;
  const events = names.map((name, hours) => {
    const [kind, data, toStage] = kinds[name];
    return { kind, data, toStage, at: new Date(Date.UTC(2026, 11, 1, hours)) };
  });
  const ended = endedPrice(events);
  expect(ended).toEqual(
    expected && { revision: 2, endedAt: new Date(Date.UTC(2026, 11, 1, 2)), ...expected },
  );
});
