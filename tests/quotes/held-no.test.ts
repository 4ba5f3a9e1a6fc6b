import { describe, expect, it } from 'vitest';
import { day } from '@/lib/calendar/day';
import { STAGES } from '@/lib/jobs/rules/stages';
import { heldNo, noOfJob, noOfRequest, yesAfterNo } from '@/lib/quotes/rules/held-no';
import { REQUEST_STATES } from '@/lib/quotes/rules/request-states';

const price = (revision: number, state: string, validUntil = '2026-12-27') => ({
  revision,
  state,
  validUntil: new Date(`${validUntil}T00:00:00Z`),
});
const no = (revision: number) => ({ revision, decision: 'declined' });

describe('a price that was declined', () => {
  const revisions = [price(1, 'replaced'), price(2, 'declined'), price(3, 'accepted')];

  it.each([
    ['on its last day', 2, '2026-12-27', 2],
    ['on the day after it', 2, '2026-12-28', undefined],
    ['another one than the no was given to', 3, '2026-12-01', undefined],
    ['without a no', null, '2026-12-01', undefined],
  ])('can be agreed to while it is held: %s', (_name, answered, today, revision) => {
    expect(heldNo(revisions, { no: answered, today: day(today) })?.revision).toBe(revision);
  });
});

describe('the no that stands on a job', () => {
  const declined = { kind: 'offer-decided', toStage: 'declined', data: no(2) };
  const later = { kind: 'message-sent', toStage: null, data: { messageId: 'm', author: 'staff' } };

  it('stands in one stage alone: not before it, and not once the unit is packed', () => {
    const stages = STAGES.filter((stage) => noOfJob({ stage, events: [declined, later] }) === 2);
    expect(stages).toEqual(['declined']);
  });

  it('is none where nothing tells of it', () => {
    expect(noOfJob({ stage: 'declined', events: [later] })).toBeNull();
  });

  it.each([
    ['withdrawn', { owed: 0 }],
    ['repair-stopped', { why: 'not-repairable', reason: 'Burnt through.', owed: 0 }],
  ])('is none where the unit goes back for another reason: %s', (kind, data) => {
    const events = [declined, { kind, toStage: 'declined', data }];
    expect(noOfJob({ stage: 'declined', events })).toBeNull();
  });

  it('is the last one of several', () => {
    const events = [declined, { ...declined, data: no(5) }];
    expect(noOfJob({ stage: 'declined', events })).toBe(5);
  });
});

describe('the no that stands on a quote', () => {
  const events = [
    { kind: 'decided', data: no(1) },
    { kind: 'decided', data: no(3) },
    { kind: 'added', data: { messageId: 'm', photos: 0 } },
  ];

  it('is the last one, in one state alone', () => {
    expect(REQUEST_STATES.filter((state) => noOfRequest({ state, events }) === 3)).toEqual(['declined']);
    expect(noOfRequest({ state: 'declined', events: events.slice(2) })).toBeNull();
  });
});

describe('the yes that a no was turned into', () => {
  it.each(['offer-decided', 'decided'])('is found by the no, on %s', (kind) => {
    const events = [
      { kind, data: no(2) },
      { kind: 'link-renewed', data: {} },
      { kind, data: { revision: 4, decision: 'accepted', afterNoTo: 2 } },
    ];
    expect(yesAfterNo(events, { no: 2 })).toBe(4);
    expect(yesAfterNo(events, { no: 4 })).toBeNull();
    expect(yesAfterNo(events.slice(0, 2), { no: 2 })).toBeNull();
  });
});
