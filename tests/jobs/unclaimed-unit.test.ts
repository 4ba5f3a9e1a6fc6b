import { describe, expect, it } from 'vitest';
import { day } from '@/lib/calendar/day';
import { isOwedWaived, lastDecision, type UnitEvent } from '@/lib/jobs/rules/decision';
import { noticeMail, stepOfUnit, type UnclaimedUnit } from '@/lib/jobs/rules/unclaimed-unit';

const at = (on: string) => new Date(`${on}T10:00:00Z`);
const event = (kind: string, on: string, over: Partial<UnitEvent> = {}): UnitEvent => ({
  kind,
  at: at(on),
  fromStage: null,
  toStage: null,
  data: {},
  ...over,
});
const moved = (on: string, fromStage: string, toStage: string) => event('moved', on, { fromStage, toStage });
const proved = (on: string) => moved(on, 'proving', 'ready');
const decided = (on: string, decision: string, until: string | null = null) =>
  event('unclaimed-decided', on, {
    data: { decision, note: 'As agreed', until },
    ...(decision === 'send-back-unpaid' && { fromStage: 'unclaimed', toStage: 'ready' }),
  });
const wrote = (on: string, author: string) => event('message-sent', on, { data: { messageId: 'm', author } });
const paid = (on: string, amount: number) =>
  event('payment-recorded', on, { data: { paymentId: 'p', amount } });
const letter = (template: string, on: string | null, bouncedOn: string | null = null) => ({
  template,
  state: on === null ? 'queued' : 'sent',
  sentAt: on === null ? null : at(on),
  bouncedAt: bouncedOn === null ? null : at(bouncedOn),
});

/** Notices after 21 days, the first told on Monday 2 November 2026: due on the 23rd. */
const house = {
  timeZone: 'Europe/London',
  unclaimedAfterDays: 21,
  unclaimedEveryDays: 21,
  unclaimedNotices: 3,
};
const TOLD: UnclaimedUnit = {
  events: [proved('2026-11-02')],
  mails: [letter('unit-ready', '2026-11-02')],
  unclaimedNotices: [],
};
const step = (over: Partial<UnclaimedUnit>) => stepOfUnit({ ...TOLD, ...over }, house, day('2026-11-10'));
const waitsUntil = (on: string) => ({ step: 'wait', until: on });

// The workshop's own days; counted by hand. Common practice, no source.
describe('from when a unit counts as waiting for its customer', () => {
  it.each<[string, Partial<UnclaimedUnit>, object]>([
    ['the letter that it is ready', {}, waitsUntil('2026-11-23')],
    ['a letter that left later', { mails: [letter('unit-ready', '2026-11-04')] }, waitsUntil('2026-11-25')],
    ['nobody was told: the letter has not left', { mails: [letter('unit-ready', null)] }, { step: 'none' }],
    [
      'nobody was told: it came back',
      { mails: [letter('unit-ready', '2026-11-02', '2026-11-03')] },
      { step: 'none' },
    ],
    [
      'nobody was told: the newest letter came back, whatever an older one did',
      { mails: [letter('parcel-came-back', '2026-11-05', '2026-11-06'), ...TOLD.mails] },
      { step: 'none' },
    ],
    [
      'it was made ready again after the letter',
      { events: [proved('2026-11-02'), moved('2026-11-05', 'unclaimed', 'ready')] },
      waitsUntil('2026-11-26'),
    ],
    [
      'the customer wrote since',
      { events: [proved('2026-11-02'), wrote('2026-11-06', 'customer')] },
      waitsUntil('2026-11-27'),
    ],
    [
      'the customer paid a part since',
      { events: [proved('2026-11-02'), paid('2026-11-06', 500)] },
      waitsUntil('2026-11-27'),
    ],
    [
      'our own words are no answer',
      { events: [proved('2026-11-02'), wrote('2026-11-06', 'staff')] },
      waitsUntil('2026-11-23'),
    ],
    [
      'money given back is no answer',
      { events: [proved('2026-11-02'), paid('2026-11-06', -500)] },
      waitsUntil('2026-11-23'),
    ],
    [
      'after a notice its own days run',
      { unclaimedNotices: [{ at: at('2026-11-09') }] },
      waitsUntil('2026-11-30'),
    ],
  ])('%s', (_name, over, expected) => {
    expect(step(over)).toEqual(expected);
  });
});

it.each([
  ['not-left', [letter('unit-ready', '2026-11-02')]],
  ['not-left', [letter('unclaimed-notice', null)]],
  ['reached', [letter('unclaimed-notice', '2026-11-23')]],
  ['came-back', [letter('unclaimed-notice', '2026-11-23', '2026-11-24')]],
  ['not-left', [letter('unclaimed-notice', null), letter('unclaimed-notice', '2026-11-23')]],
])('the newest notice %s', (expected, mails) => {
  expect(noticeMail({ mails })).toBe(expected);
});

describe('what the owner decided', () => {
  it('stands with its day and its note', () => {
    expect(lastDecision([proved('2026-11-02'), decided('2027-01-25', 'keep-longer', '2027-02-28')])).toEqual({
      decision: 'keep-longer',
      note: 'As agreed',
      until: '2027-02-28',
      at: at('2027-01-25'),
    });
    expect(lastDecision([proved('2026-11-02')])).toBeNull();
  });

  it.each<[string, boolean, UnitEvent[]]>([
    ['stands', true, []],
    [
      'outlives work that was opened again and proved',
      true,
      [moved('2027-01-27', 'ready', 'on-bench'), proved('2027-01-28')],
    ],
    [
      'outlives a parcel that came back',
      true,
      [
        moved('2027-01-27', 'ready', 'sent-back'),
        event('came-back', '2027-02-03', { fromStage: 'sent-back', toStage: 'ready' }),
      ],
    ],
    [
      'outlives a dispatch that was entered by mistake',
      true,
      [
        moved('2027-01-27', 'ready', 'sent-back'),
        event('dispatch-undone', '2027-01-28', { fromStage: 'sent-back', toStage: 'ready' }),
      ],
    ],
    [
      'ends with the next time it is set aside and taken up',
      false,
      [moved('2027-01-27', 'ready', 'unclaimed'), moved('2027-01-28', 'unclaimed', 'ready')],
    ],
    ['ends with another decision', false, [decided('2027-02-01', 'keep-longer', '2027-03-01')]],
  ])('to send it back unpaid %s', (_name, expected, since) => {
    const events = [proved('2026-11-02'), decided('2027-01-25', 'send-back-unpaid'), ...since];
    expect(isOwedWaived(events)).toBe(expected);
  });
});
