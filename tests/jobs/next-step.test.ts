import { describe, expect, it } from 'vitest';
import { day } from '@/lib/calendar/day';
import { type NextFacts, nextForCustomer } from '@/lib/jobs/rules/next-step';
import { STAGES, type Stage } from '@/lib/jobs/rules/stages';
import { RULINGS } from '@/lib/warranty/rules/causes';

const CLAIM: NextFacts = {
  stage: 'on-bench',
  kind: 'claim',
  promisedOn: null,
  owed: null,
  startAfter: null,
  offerUntil: null,
  carrier: '',
  transitDays: 5,
  ruling: 'partly',
  hasCertificate: false,
  decision: null,
};
const next = (over: Partial<NextFacts>) => nextForCustomer({ ...CLAIM, ...over }, 'en-GB');

describe('what happens next to a parcel that came without a booking', () => {
  it.each(['arrived', 'assessing'] as const)(
    'at the stage %s is a price, and nothing before a yes',
    (stage) => {
      const told = next({ stage, kind: 'repair', ruling: null, isPriceOpen: true });
      expect(told).toContain('Nothing is repaired before you say yes');
      expect(told).not.toContain('booked');
    },
  );
});

describe('what happens next to a unit whose customer contested the ruling and then withdrew', () => {
  it('is the answer, and no packing before it', () => {
    const told = next({ stage: 'declined', ruling: null });
    expect(told).toContain('looking at your claim again');
    expect(told).not.toContain('pack');
  });
});

describe('what happens next to a unit that goes back unpaid, as the owner decided', () => {
  it('is its way back, with what stays owed, and no wait for the money', () => {
    const told = next({
      stage: 'ready',
      kind: 'repair',
      ruling: null,
      owed: '£72.00',
      decision: 'send-back-unpaid',
    });
    expect(told).toContain('£72.00 stays owed');
    expect(told).not.toContain('your payment');
  });
});

describe('what happens next to a unit with a part of a recalled lot', () => {
  it.each(['sent-back', 'closed', 'cancelled'] as const)(
    'is at the stage %s to read about it first, and never that nothing is left to do',
    (stage) => {
      const told = next({ stage, kind: 'repair', ruling: null, hasCertificate: true, recalled: 'cell' });
      expect(told).toMatch(/do not charge it and do not post it\..* answer us there/);
      expect(told).not.toMatch(/nothing left to do|opens your claim/);
      const part = next({ stage, kind: 'repair', ruling: null, owed: '£96.00', recalled: 'part' });
      expect(part).toContain('£96.00 is left to pay');
      expect(part).not.toContain('do not post');
    },
  );

  it('is what it always is while we have it', () => {
    expect(next({ recalled: 'cell' })).toBe(next({}));
  });
});

describe('what happens next to a unit that left in another way', () => {
  it('is nothing once it was collected, and no parcel is waited for', () => {
    const told = next({
      stage: 'closed',
      kind: 'repair',
      ruling: null,
      isCollected: true,
      hasCertificate: true,
    });
    expect(told).toContain('You collected your unit. Keep the certificate');
  });

  it('is a word to us where it counts as delivered and has not come', () => {
    const told = next({ stage: 'closed', kind: 'repair', ruling: null, isClosedByTime: true });
    expect(told).toContain('Has it not come, or did it come damaged? Write to us below.');
    expect(next({ stage: 'closed', kind: 'repair', ruling: null })).not.toContain('not come');
  });

  it('is the customer’s answer about their address once the parcel came back', () => {
    const told = next({
      stage: 'ready',
      kind: 'repair',
      ruling: null,
      waitsForAddress: true,
      hasCertificate: true,
    });
    expect(told).toContain('whether the address under “Goes back to” is right');
    expect(told).not.toContain('next working day');
  });
});

describe('what happens next to a unit that nobody answered about', () => {
  const unclaimed = (over: Partial<NextFacts>) =>
    next({ stage: 'unclaimed', kind: 'repair', ruling: null, ...over });

  it('names the payment it waits for, or the address, as the notice says the page does', () => {
    expect(unclaimed({ owed: '£96.00' })).toMatch(/waits here for your payment.*£96\.00 is left to pay/);
    expect(unclaimed({ waitsForAddress: true })).toContain(
      'whether the address under “Goes back to” is right',
    );
    expect(unclaimed({})).toContain('write to us here whether we can send it');
  });

  it('says of nobody who was told that they could not be reached', () => {
    for (const owed of [null, '£96.00'])
      for (const waitsForAddress of [true, false])
        expect(unclaimed({ owed, waitsForAddress })).not.toContain('could not reach');
  });
});

it('says when a missing part is expected, where a day is known', () => {
  const repair = { kind: 'repair', ruling: null, stage: 'awaiting-parts' } as const;
  expect(next(repair)).toBe('We go on as soon as the part is here.');
  expect(next({ ...repair, partOn: day('2026-12-03') })).toBe(
    'We go on as soon as the part is here. We expect it by Thursday 3 December 2026.',
  );
});

describe('what happens next to a unit on the bench', () => {
  // One that cannot be repaired goes back too, as does one whose customer withdraws.
  it.each(['on-bench', 'proving'] as const)(
    'at the stage %s is a proof of what is repaired, and not its only way back',
    (stage) => {
      const told = next({ stage, kind: 'repair', ruling: null, startAfter: day('2026-12-15') });
      expect(told).toMatch(/^Once it is repaired, it has to pass its tests before we call it ready/);
      expect(told).not.toMatch(/goes back|comes back|only/);
    },
  );
});

describe('what happens next on a claim', () => {
  it('is the parcel, whose postage is the customer’s until the claim is covered', () => {
    const told = next({ stage: 'booked', ruling: null });
    expect(told).toContain('Our inspection costs you nothing. You pay the postage to us.');
    expect(told).not.toContain('This costs you nothing');
  });

  it.each(['arrived', 'awaiting-parts', 'on-bench', 'proving', 'ready'] as const)(
    'costs nothing at the stage %s while nothing else was agreed',
    (stage) => {
      expect(next({ stage })).toContain('This costs you nothing.');
    },
  );

  it.each(['awaiting-parts', 'on-bench', 'proving'] as const)(
    'keeps the covered part free at the stage %s when the rest was agreed',
    (stage) => {
      const text = next({ stage, owed: '£24.00' });
      expect(text).toContain(
        'The covered part costs you nothing. For the rest you pay £24.00 when it is ready, as you agreed.',
      );
      expect(text).not.toContain('This costs you nothing');
    },
  );

  it.each(['awaiting-parts', 'on-bench', 'proving', 'ready'] as const)(
    'is not called free at the stage %s once it was paid for',
    (stage) => {
      const paid = (ruling: NextFacts['ruling']) => next({ stage, ruling, isPaidAgreed: true });
      expect(paid('not-covered')).toContain('You have paid for it.');
      expect(paid('partly')).toContain('costs you nothing, and you have paid for the rest.');
      for (const ruling of ['not-covered', 'partly'] as const)
        expect(paid(ruling)).not.toContain('This costs you nothing');
    },
  );

  it.each(['awaiting-parts', 'on-bench', 'proving'] as const)(
    'names no covered part at the stage %s where nothing is covered',
    (stage) => {
      const told = next({ stage, ruling: 'not-covered', owed: '£60.00', isPaidAgreed: true });
      expect(told).toContain('You pay £60.00 when it is ready, as you agreed.');
      expect(told).not.toContain('covered part');
    },
  );

  it('is what becomes of the money, while a ruling is contested after a price was agreed to', () => {
    const told = (over: Partial<NextFacts>) =>
      next({ stage: 'assessing', ruling: null, isPaidAgreed: true, ...over });
    expect(told({})).toContain('comes back to you if it is covered');
    expect(told({ owed: '£60.00' })).toContain('You pay nothing before you have our ruling.');
  });

  it('says how much is left to pay before it goes back', () => {
    expect(next({ stage: 'ready', owed: '£24.00' })).toContain('£24.00');
  });
});

const KINDS = [
  { kind: 'repair', ruling: null },
  { kind: 'claim', ruling: null },
  ...RULINGS.map((ruling) => ({ kind: 'claim', ruling }) as const),
] as const;

describe.each(KINDS)('what happens next on a $kind with the ruling $ruling', ({ kind, ruling }) => {
  const told = (stage: Stage, over: Partial<NextFacts> = {}) => next({ stage, kind, ruling, ...over });

  it.each(STAGES)('is told in whole sentences of its own at the stage %s', (stage) => {
    expect(told(stage)).toMatch(/^\p{Lu}.*\p{L}\.$/u);
    expect(told(stage)).not.toMatch(/undefined|null|\s\s|\.\.|\s\./);
    // The bench and its check sheet are one wait for the customer.
    const alike = STAGES.filter((other) => told(other) === told(stage));
    const bench: Stage[] = ['on-bench', 'proving'];
    expect(alike).toEqual(bench.includes(stage) ? bench : [stage]);
  });

  it('asks nobody to pay who owes nothing, and names what is owed where the unit waits for it', () => {
    for (const stage of STAGES) expect(told(stage)).not.toMatch(/How to pay|£|your payment/);
    expect(told('ready', { owed: '£24.00' })).toContain('£24.00 is left to pay');
  });

  it('speaks of a ruling and of a free repair on claims alone', () => {
    const words = STAGES.map((stage) => told(stage)).join(' ');
    expect(/ruling|claim|covered|costs you nothing/.test(words)).toBe(kind === 'claim');
  });

  it('promises the day wherever work goes on, and no later', () => {
    const dated = STAGES.filter((stage) =>
      told(stage, { promisedOn: day('2026-12-09') }).includes('9 December'),
    );
    expect(dated).toEqual(
      expect.arrayContaining(['arrived', 'awaiting-parts', 'on-bench', 'proving'] satisfies Stage[]),
    );
    for (const stage of ['booked', 'ready', 'sent-back', 'closed', 'cancelled', 'declined'] as const)
      expect(dated).not.toContain(stage);
  });
});

it('asks for no yes to a price whose last day has passed', () => {
  const asked = {
    kind: 'repair',
    ruling: null,
    stage: 'awaiting-approval',
    offerUntil: day('2027-01-16'),
  } as const;
  expect(next(asked)).toContain('Please say yes or no below by Saturday 16 January 2027');
  const over = next({ ...asked, isOfferOver: true });
  expect(over).toContain('held until Saturday 16 January 2027, and no answer came');
  expect(over).not.toMatch(/say yes or no/);
});

describe('what happens next on a claim that is being assessed', () => {
  const assessed = (ruling: NextFacts['ruling']) =>
    next({ stage: 'assessing', ruling, promisedOn: day('2026-12-09') });

  it('is the ruling, while there is none', () => {
    expect(assessed(null)).toContain('tell you our ruling');
  });

  it('is another look, where a ruling was told before', () => {
    const told = next({ stage: 'assessing', ruling: null, isLookedAtAgain: true });
    expect(told).toMatch(/look at it again.*costs you nothing/);
    expect(told).not.toContain('find out why it failed');
  });

  it('is the repair at no cost where it is covered', () => {
    expect(assessed('covered')).toMatch(/is covered, and we repair it.*9 December.*costs you nothing/);
  });

  it('is the covered part at no cost, and a price for the rest', () => {
    expect(assessed('partly')).toMatch(/covered part.*costs you nothing.*For the rest we send you a price/);
  });

  it('is a price and a way back without one where it is not covered', () => {
    expect(assessed('not-covered')).toMatch(/does not cover this.*say yes or no.*comes back free of charge/);
  });

  it.each(['not-covered', 'partly'] as const)(
    'is the repair agreed to before, where it stays %s',
    (ruling) => {
      const told = next({ stage: 'assessing', ruling, owed: '£60.00', isPaidAgreed: true });
      expect(told).toMatch(/you agreed to.*you pay £60\.00 when it is ready/i);
      expect(told).not.toMatch(/send you a price|say yes/);
      expect(next({ stage: 'assessing', ruling, isPaidAgreed: true })).toContain('You have paid for it.');
    },
  );

  it('is the way back where no fault was found', () => {
    expect(assessed('returned-free')).toMatch(/send it back.*costs you nothing/);
  });

  it.each(['covered', 'partly', 'not-covered', 'returned-free'] as const)(
    'speaks of no booking and no second ruling when it is %s',
    (ruling) => expect(assessed(ruling)).not.toMatch(/booked|find out/),
  );
});

describe('a job that is closed', () => {
  const closed = (over: Partial<NextFacts>) =>
    next({ stage: 'closed', kind: 'repair', ruling: null, ...over });

  it('says to keep the certificate only where there is one', () => {
    expect(closed({ hasCertificate: true })).toContain('Keep the certificate');
    expect(closed({})).toBe('There is nothing left to do. Your unit went back to you.');
    expect(closed({ isCollected: true })).toBe('There is nothing left to do. You collected your unit.');
    expect(closed({ isCollected: true, hasCertificate: true })).toContain('You collected your unit. Keep');
    expect(closed({ hasCertificate: true })).not.toContain('collected');
    expect(closed({ kind: 'claim' })).toContain('The certificate you have stands as it did');
  });

  it('leaves something to do where something is owed', () => {
    for (const over of [
      {},
      { isCollected: true },
      { hasCertificate: true },
      { decision: 'recycle' },
    ] as const) {
      const told = closed({ owed: '£96.00', ...over });
      expect(told).toContain('£96.00 is left to pay. How to pay is below.');
      expect(told).not.toContain('nothing left to do');
    }
  });

  it.each([
    ['give-away', 'given your unit away'],
    ['recycle', 'had your unit recycled'],
    ['sell', 'sold your unit'],
  ] as const)('says what became of a unit that nobody fetched: %s', (decision, words) => {
    expect(closed({ decision })).toContain(words);
    expect(closed({ decision })).not.toContain('went back');
  });
});

describe('what happens next on a repair', () => {
  const repair = (over: Partial<NextFacts>) => next({ kind: 'repair', ruling: null, ...over });

  it('names what is left to pay before a declined unit comes back', () => {
    expect(next({ stage: 'declined', owed: '£25.00' })).toContain('£25.00');
    expect(next({ stage: 'declined' })).toContain('free of charge');
    expect(repair({ stage: 'declined', owed: '£27.60' })).toContain('£27.60');
    expect(repair({ stage: 'declined' })).toContain('nothing is left to pay');
  });

  it.each(['arrived', 'assessing', 'on-bench'] as const)(
    'says at the stage %s from when work may start, where it waits for the right to withdraw',
    (stage) => {
      const text = repair({ stage, startAfter: day('2026-12-15') });
      expect(text).toMatch(/Work starts after Tuesday,? 15 December 2026/);
      expect(repair({ stage })).not.toContain('withdraw');
    },
  );
});

describe('what happens next to a parcel that does not come', () => {
  const gone = { kind: 'repair', ruling: null, hasCertificate: true, carrier: 'Harbour Post' } as const;
  const since = day('2026-12-03');

  it.each(['sent-back', 'closed'] as const)(
    'is at the stage %s that its carrier is asked, and since when',
    (stage) => {
      const told = next({ ...gone, stage, search: { state: 'sought', since } });
      expect(told).toContain('We ask Harbour Post for it since Thursday 3 December 2026');
      expect(told).not.toMatch(/usually arrives|nothing left to do|Keep the certificate/);
    },
  );

  it('is, where it is lost, what we do about it, and no certificate to keep; what is owed is said', () => {
    const told = next({ ...gone, stage: 'closed', owed: '£72.00', search: { state: 'lost', since: null } });
    expect(told).toContain('it was not found');
    expect(told).toContain('£72.00 is left to pay');
    expect(told).not.toMatch(/nothing left to do|Keep the certificate/);
  });

  it.each([
    ['sought', 'cell', 'We ask Harbour Post for it since', 'do not use it, do not charge it'],
    ['lost', 'cell', 'it was not found', 'do not use it, do not charge it'],
    ['lost', 'part', 'it was not found', 'do not use it: read'],
  ] as const)(
    'is, %s with a recalled %s in it, the search first and the warning behind it',
    (state, recalled, first, then) => {
      const told = next({ ...gone, stage: 'closed', recalled, search: { state, since } });
      expect(told).toContain(first);
      expect(told.indexOf(`Should it come after all, please ${then}`)).toBeGreaterThan(told.indexOf(first));
      expect(told).not.toMatch(/stop using/);
    },
  );

  it('is, once it was delivered with a recalled part in it, the warning alone', () => {
    const told = next({ ...gone, stage: 'closed', recalled: 'part', search: { state: 'delivered', since } });
    expect(told).toMatch(/^Please stop using the unit\./);
  });

  it('is, once it was delivered, as for any other', () => {
    const told = next({ ...gone, stage: 'closed', search: { state: 'delivered', since: null } });
    expect(told).toBe(next({ ...gone, stage: 'closed' }));
  });
});

describe('what happens next to a unit that was said to have left and is here', () => {
  it('is that it was a mistake, and when it leaves', () => {
    const told = next({ stage: 'ready', kind: 'repair', ruling: null, isNotGone: true });
    expect(told).toContain('That was a mistake of ours: it is here. We post it on the next working day.');
  });
});

it.each(['arrived', 'assessing', 'awaiting-parts', 'on-bench', 'proving'] as const)(
  'at the stage %s a promise whose day has passed is told as late',
  (stage) => {
    const facts = { stage, kind: 'repair', ruling: null, promisedOn: day('2026-11-25') } as const;
    expect(next(facts)).toContain('We promised to have it ready by Wednesday 25 November 2026.');
    expect(next(facts)).not.toContain('late');
    expect(next({ ...facts, isLate: true })).toContain(
      'by Wednesday 25 November 2026, and are late. We are sorry.',
    );
  },
);

it('who has booked a repair is told how long it takes once it is here', () => {
  const booked = { stage: 'booked', kind: 'repair', ruling: null } as const;
  const stated = { days: 5, isQuoted: false, waitsUntil: null };
  expect(next({ ...booked, stated })).toContain(
    'post the unit to us. The day it arrives we write to you and promise you a date. Our price list reckons with 5 working days from then; a full bench takes longer.',
  );
  const quoted = { days: 1, isQuoted: true, waitsUntil: day('2026-12-15') };
  expect(next({ ...booked, stated: quoted })).toContain(
    'Our quote names 1 working day from then, or from Tuesday 15 December 2026 if that is later.',
  );
  expect(next({ ...booked, stage: 'arrived', stated })).not.toContain('price list');
});

it('who has given the number of their parcel is not told to post it', () => {
  const booked = { stage: 'booked', kind: 'repair', ruling: null } as const;
  expect(next(booked)).toContain('post the unit to us. We write to you the day it arrives.');
  const told = next({ ...booked, isPosted: true });
  expect(told).toContain(
    'Your parcel is on its way, and we look out for it. We write to you the day it arrives.',
  );
  expect(told).not.toMatch(/packing slip|post the unit/);
});
