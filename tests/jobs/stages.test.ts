import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { day } from '@/lib/calendar/day';
import {
  answerMove,
  type JobFacts,
  lateAnswerMove,
  mayMove,
  openMoves,
  REASON_SENTENCES,
  reasonSentence,
} from '@/lib/jobs/rules/guards';
import { stageDiagram } from '@/lib/jobs/rules/stage-diagram';
import {
  FINAL_STAGES,
  MOVES,
  type Move,
  type MoveBy,
  type MoveKey,
  moveOf,
  movesFrom,
  STAGE_WORDS,
  STAGES,
  type Stage,
} from '@/lib/jobs/rules/stages';
import { factsOf } from '@/lib/mail/rules/content';

const READY: JobFacts = {
  kind: 'repair',
  stage: 'ready',
  isSerialSettled: true,
  findings: 1,
  hasOpenOffer: false,
  hasAgreedPaidOffer: false,
  isPriceAgreed: true,
  isContractMade: true,
  ruling: null,
  workEntries: 1,
  checksFailed: 0,
  checksMissing: 0,
  owed: 0,
  withdrawUntil: null,
  isStartAllowed: true,
  mayWithdraw: false,
  isRepaired: true,
  isHandoverNamed: true,
  isGone: false,
  isSought: false,
  isWalkIn: false,
  isUntouched: false,
  hasMoney: false,
  isWithCarrier: false,
  hasLeft: false,
  mayContest: false,
  isNoHeld: false,
  hasLapsedPrice: false,
};

describe('the table of stages', () => {
  it('has every stage reachable from booked, by moves whose ends are stages', () => {
    const reached = new Set<Stage>(['booked']);
    for (let size = 0; size !== reached.size; ) {
      size = reached.size;
      for (const stage of [...reached]) {
        for (const kind of ['repair', 'claim'] as const) {
          for (const move of movesFrom(stage, kind)) reached.add(move.to);
        }
      }
    }
    expect([...reached].sort()).toEqual([...STAGES].sort());
  });

  it('ends at closed and cancelled only', () => {
    expect([...FINAL_STAGES].sort()).toEqual(['cancelled', 'closed']);
  });

  it('names each move once, and only mails that exist', () => {
    expect(new Set(MOVES.map((move) => move.key)).size).toBe(MOVES.length);
    for (const move of MOVES) {
      const { mail }: Move = move;
      if (mail) expect(Object.keys(factsOf)).toContain(mail);
    }
  });

  it('has words for every stage, and a sentence for every reason why not', () => {
    for (const stage of STAGES) expect(STAGE_WORDS[stage].customer).toMatch(/\.$/);
    for (const sentence of Object.values(REASON_SENTENCES)) expect(sentence).toMatch(/\.$/);
  });

  it('is the one drawn in DEVELOPERS.md', () => {
    const guide = readFileSync('DEVELOPERS.md', 'utf8');
    const drawn = /```mermaid\n(stateDiagram-v2[\s\S]*?)\n```/.exec(guide)?.[1];
    expect(drawn).toBe(stageDiagram());
  });

  it('is the one the database checks', () => {
    const sql = readFileSync(
      'prisma/migrations/20261125073100_decided_in_the_database/migration.sql',
      'utf8',
    );
    const checked = /"job_stage_known" CHECK \("stage" IN\s*\(([^)]*)\)/.exec(sql)?.[1] ?? '';
    expect([...checked.matchAll(/'([^']+)'/g)].map((match) => match[1]).sort()).toEqual([...STAGES].sort());
  });
});

describe('who may move a job, and what must hold', () => {
  it.each<[string, Partial<JobFacts>, string, MoveBy, readonly string[]]>([
    ['a unit that is paid, proved and has a carrier goes back', {}, 'dispatch', 'staff', []],
    ['an unpaid unit does not go back', { owed: 1 }, 'dispatch', 'staff', ['nothing-owed']],
    [
      'a unit of which nobody said how it leaves does not go back',
      { isHandoverNamed: false },
      'dispatch',
      'staff',
      ['handover-named'],
    ],
    ['the owner may do what staff may', {}, 'dispatch', 'owner', []],
    ['a customer does not send a unit back', {}, 'dispatch', 'customer', ['wrong-person']],
    [
      'staff write down a yes that the customer told them',
      { stage: 'awaiting-approval' },
      'approve',
      'staff',
      [],
    ],
    [
      'and nobody else says it for them',
      { stage: 'awaiting-approval' },
      'approve',
      'clock',
      ['wrong-person'],
    ],
    ['a customer cancels before arrival', { stage: 'booked' }, 'cancel', 'customer', []],
    ['nobody cancels after arrival', { stage: 'arrived' }, 'cancel', 'staff', ['wrong-stage']],
    [
      'an unsettled serial holds the job',
      { stage: 'arrived', isSerialSettled: false },
      'assess',
      'staff',
      ['serial-settled'],
    ],
    [
      'approval needs a finding and a price',
      { stage: 'assessing', findings: 0 },
      'ask-approval',
      'staff',
      ['finding-recorded', 'offer-sent'],
    ],
    [
      'a failed check blocks proving',
      { stage: 'proving', checksFailed: 1 },
      'pass-checks',
      'staff',
      ['checks-passed'],
    ],
    [
      'a missing check blocks proving',
      { stage: 'proving', checksMissing: 1 },
      'pass-checks',
      'staff',
      ['checks-passed'],
    ],
    ['a repair that is ready can be opened again', {}, 'reopen-work', 'staff', []],
    [
      'not once it has left, and its certificate is issued',
      { hasLeft: true },
      'reopen-work',
      'staff',
      ['not-left-before'],
    ],
    [
      'a parcel that its carrier brought back is ready once more, also after the job was closed',
      { stage: 'closed', isWithCarrier: true, hasLeft: true },
      'came-back',
      'staff',
      [],
    ],
    ['the clock closes what was sent back', { stage: 'sent-back', isGone: true }, 'close', 'clock', []],
    [
      'nobody closes a job whose parcel is looked for',
      { stage: 'sent-back', isGone: true, isSought: true },
      'close',
      'owner',
      ['not-sought'],
    ],
    [
      'a parcel that was taken in under the wrong booking is awaited again',
      { stage: 'arrived', isUntouched: true, isSerialSettled: false },
      'undo-arrival',
      'staff',
      [],
    ],
    [
      'not once something was recorded of the unit',
      { stage: 'arrived' },
      'undo-arrival',
      'staff',
      ['nothing-recorded'],
    ],
    [
      'nor where no booking waits for another',
      { stage: 'arrived', isUntouched: true, isWalkIn: true },
      'undo-arrival',
      'staff',
      ['was-booked'],
    ],
    [
      'a parcel for which a job was opened is that of a booking',
      { stage: 'arrived', isUntouched: true, isWalkIn: true, isPriceAgreed: false },
      'is-of-booking',
      'staff',
      [],
    ],
    [
      'also once it is assessed',
      { stage: 'assessing', isUntouched: true, isWalkIn: true, isPriceAgreed: false },
      'is-of-booking',
      'owner',
      [],
    ],
    [
      'not once something is recorded, agreed to or paid',
      { stage: 'assessing', isWalkIn: true, hasMoney: true },
      'is-of-booking',
      'staff',
      ['nothing-recorded', 'no-price-agreed', 'no-money'],
    ],
    [
      'nor of one that was booked itself, nor while a price waits for its answer',
      { stage: 'awaiting-approval', isUntouched: true, isPriceAgreed: false },
      'is-of-booking',
      'staff',
      ['wrong-stage', 'came-unbooked'],
    ],
    [
      'nor of a claim',
      { kind: 'claim', stage: 'arrived', isUntouched: true, isWalkIn: true, isPriceAgreed: false },
      'is-of-booking',
      'staff',
      ['wrong-kind'],
    ],
    [
      'a unit that was recorded as collected by mistake is ready as before',
      { stage: 'closed', isGone: true, hasLeft: true },
      'undo-dispatch',
      'staff',
      [],
    ],
    ['one that the owner gave away is not', { stage: 'closed' }, 'undo-dispatch', 'staff', ['went']],
    [
      'a unit that was collected comes back from nobody',
      { stage: 'closed', hasLeft: true },
      'came-back',
      'staff',
      ['went-by-carrier'],
    ],
    [
      'so can one that is being proved, whatever its checks say',
      { stage: 'proving', isRepaired: false, checksMissing: 2 },
      'reopen-work',
      'staff',
      [],
    ],
    [
      'a unit that goes back as it came has no work to open',
      { isRepaired: false },
      'reopen-work',
      'staff',
      ['not-as-it-came'],
    ],
    [
      'a claim is not repaired before its ruling',
      { kind: 'claim', stage: 'assessing' },
      'start-bench',
      'staff',
      ['ruled', 'free-or-agreed'],
    ],
    [
      'a ruling that was told is looked at again by the owner',
      { kind: 'claim', stage: 'ready', ruling: 'returned-free', isRepaired: false },
      'look-again',
      'owner',
      [],
    ],
    [
      'and by nobody else of the workshop',
      { kind: 'claim', stage: 'assessing', ruling: 'returned-free', isRepaired: false },
      'look-again',
      'staff',
      ['wrong-person'],
    ],
    [
      'one that the customer was not told is none',
      { kind: 'claim', stage: 'assessing', isRepaired: false },
      'look-again',
      'owner',
      ['ruled'],
    ],
    [
      'nor is one whose unit was repaired as covered, as its customer was told',
      { kind: 'claim', ruling: 'covered' },
      'look-again',
      'owner',
      ['not-done-as-covered'],
    ],
    [
      'but one that was repaired for money may turn out to be covered',
      { kind: 'claim', ruling: 'not-covered', hasAgreedPaidOffer: true },
      'look-again',
      'owner',
      [],
    ],
    [
      'what left stays as it was ruled, also after its parcel came back',
      { kind: 'claim', ruling: 'returned-free', isRepaired: false, hasLeft: true },
      'look-again',
      'owner',
      ['not-left'],
    ],
    [
      'nor while a contested ruling is not answered, whatever price was agreed to',
      { kind: 'claim', stage: 'assessing', hasAgreedPaidOffer: true },
      'start-bench',
      'staff',
      ['ruled'],
    ],
    [
      'and no part is ordered for it',
      { kind: 'claim', stage: 'assessing', hasAgreedPaidOffer: true },
      'wait-for-parts',
      'staff',
      ['ruled'],
    ],
    [
      'nor is it packed by who withdrew meanwhile',
      { kind: 'claim', stage: 'declined' },
      'pack-unrepaired',
      'staff',
      ['ruled'],
    ],
    [
      'a covered claim is repaired',
      { kind: 'claim', stage: 'assessing', ruling: 'covered' },
      'start-bench',
      'staff',
      [],
    ],
    [
      'a covered claim does not go back unrepaired',
      { kind: 'claim', stage: 'assessing', ruling: 'covered' },
      'return-unrepaired',
      'staff',
      ['ruled-not-covered'],
    ],
    [
      'a claim whose paid repair was agreed to and not done is not returned by its ruling, which would bill it',
      {
        kind: 'claim',
        stage: 'assessing',
        ruling: 'not-covered',
        isRepaired: false,
        hasAgreedPaidOffer: true,
      },
      'return-unrepaired',
      'staff',
      ['nothing-undone'],
    ],
    [
      'one whose paid repair was done before the second look is',
      { kind: 'claim', stage: 'assessing', ruling: 'not-covered', hasAgreedPaidOffer: true },
      'return-unrepaired',
      'staff',
      [],
    ],
    [
      'a repair is not returned by a ruling',
      { stage: 'assessing' },
      'return-unrepaired',
      'staff',
      ['wrong-kind', 'ruled-not-covered'],
    ],
    [
      'a no to the rest of a partly covered claim puts the covered part on the bench',
      { kind: 'claim', stage: 'awaiting-approval', ruling: 'partly' },
      'decline-the-rest',
      'customer',
      [],
    ],
    [
      'and never sends it back unrepaired',
      { kind: 'claim', stage: 'awaiting-approval', ruling: 'partly' },
      'decline',
      'customer',
      ['nothing-covered'],
    ],
    [
      'nor where the whole claim is covered and something else was found',
      { kind: 'claim', stage: 'awaiting-approval', ruling: 'covered' },
      'decline',
      'customer',
      ['nothing-covered'],
    ],
    [
      'a claim that covers nothing goes back after a no',
      { kind: 'claim', stage: 'awaiting-approval', ruling: 'not-covered' },
      'decline',
      'customer',
      [],
    ],
    [
      'and has no covered part to repair',
      { kind: 'claim', stage: 'awaiting-approval', ruling: 'not-covered' },
      'decline-the-rest',
      'customer',
      ['something-covered'],
    ],
    [
      'a repair has no covered part either',
      { stage: 'awaiting-approval' },
      'decline-the-rest',
      'customer',
      ['wrong-kind', 'something-covered'],
    ],
    ['a price lapses by the clock', { stage: 'awaiting-approval', hasOpenOffer: true }, 'lapse', 'clock', []],
    [
      'and by nobody else, who take it back instead',
      { stage: 'awaiting-approval', hasOpenOffer: true },
      'lapse',
      'staff',
      ['wrong-person'],
    ],
    [
      'nothing is repaired before the customer has agreed to a price',
      { stage: 'assessing', isPriceAgreed: false },
      'start-bench',
      'staff',
      ['price-agreed'],
    ],
    [
      'and nothing is ordered for it, not by the owner either',
      { stage: 'assessing', isPriceAgreed: false },
      'wait-for-parts',
      'owner',
      ['price-agreed'],
    ],
    [
      'but the customer may be asked',
      { stage: 'assessing', isPriceAgreed: false, hasOpenOffer: true },
      'ask-approval',
      'staff',
      [],
    ],
    [
      'work waits for the end of the right to withdraw',
      { stage: 'assessing', isStartAllowed: false },
      'start-bench',
      'staff',
      ['start-allowed'],
    ],
    [
      'no part is ordered before it either',
      { stage: 'assessing', isStartAllowed: false },
      'wait-for-parts',
      'staff',
      ['start-allowed'],
    ],
    [
      'nor is it done on a unit that came to the bench by a yes',
      { stage: 'on-bench', isStartAllowed: false },
      'prove',
      'staff',
      ['start-allowed'],
    ],
    [
      'a customer withdraws while the repair is under way',
      { stage: 'proving', mayWithdraw: true },
      'withdraw',
      'customer',
      [],
    ],
    [
      'not when the period is over',
      { stage: 'on-bench', mayWithdraw: false },
      'withdraw',
      'customer',
      ['may-withdraw'],
    ],
    [
      'not once the repair is fully done',
      { stage: 'ready', mayWithdraw: true },
      'withdraw',
      'customer',
      ['wrong-stage'],
    ],
    [
      'or tells the workshop, which writes it down',
      { stage: 'on-bench', mayWithdraw: true },
      'withdraw',
      'owner',
      [],
    ],
    [
      'nor does the clock say no for the customer',
      { kind: 'claim', stage: 'awaiting-approval', ruling: 'partly' },
      'decline-the-rest',
      'clock',
      ['wrong-person'],
    ],
    ['only the owner or the clock sets a unit aside', {}, 'set-aside', 'staff', ['wrong-person']],
    [
      'one that left is opened again for a single part of a recalled lot',
      { hasLeft: true, recalledParts: ['USB-C socket, lot L-2611'] },
      'reopen-work',
      'staff',
      [],
    ],
    [
      'what a claim covers is not repaired after all once it is',
      { kind: 'claim', ruling: 'covered' },
      'repair-after-all',
      'staff',
      ['not-repaired'],
    ],
    [
      'nor what it does not cover',
      { kind: 'claim', stage: 'declined', ruling: 'not-covered', isRepaired: false },
      'repair-after-all',
      'staff',
      ['something-covered'],
    ],
  ])('%s', (_name, over, key, by, reasons) => {
    const move = MOVES.find((each) => each.key === key);
    if (!move) throw new Error(`no move ${key}`);
    const answer = mayMove(move.key, { ...READY, ...over }, by);
    expect(answer.allowed ? [] : answer.reasons).toEqual(reasons);
  });

  it('says from which day work may start', () => {
    expect(reasonSentence('start-allowed', { withdrawUntil: day('2026-12-15') }, 'en-GB')).toMatch(
      /Work may start after Tuesday,? 15 December 2026\.$/,
    );
    expect(reasonSentence('ruled', { withdrawUntil: null }, 'en-GB')).toBe(REASON_SENTENCES.ruled);
  });

  it.each([
    ['yes', 'accepted', 'partly', 'approve'],
    ['no where a part is covered', 'declined', 'partly', 'decline-the-rest'],
    ['no where all is covered', 'declined', 'covered', 'decline-the-rest'],
    ['no where nothing is covered', 'declined', 'not-covered', 'decline'],
    ['no where no fault was found', 'declined', 'returned-free', 'decline'],
    ['no before the ruling', 'declined', null, 'decline'],
  ] as const)('the answer %s is a move that is open', (_name, decision, ruling, key) => {
    const facts = { ...READY, kind: 'claim', stage: 'awaiting-approval', ruling } as const;
    expect(answerMove(decision, facts)).toBe(key);
    expect(mayMove(answerMove(decision, facts), facts, 'customer')).toEqual({ allowed: true });
    expect(answerMove(decision, { kind: 'repair', ruling: null })).not.toBe('decline-the-rest');
  });

  it.each([
    ['while the price is held', 'declined', true, []],
    ['not once it is held no more, nor after a withdrawal', 'declined', false, ['no-held']],
    ['not once it is packed', 'ready', true, ['wrong-stage']],
  ] as const)('a no becomes a yes %s', (_name, stage, isNoHeld, reasons) => {
    const answer = mayMove('approve-after-no', { ...READY, stage, isNoHeld }, 'customer');
    expect(answer.allowed ? [] : answer.reasons).toEqual(reasons);
    expect(mayMove('approve-after-no', { ...READY, stage, isNoHeld }, 'owner')).toEqual(answer);
    expect(mayMove('approve-after-no', { ...READY, stage, isNoHeld }, 'clock').allowed).toBe(false);
  });

  it.each<[string, Partial<JobFacts>, MoveKey, MoveBy, readonly string[]]>([
    ['where the lapse led', { stage: 'assessing' }, 'approve-late', 'staff', []],
    ['on a unit that was packed meanwhile', {}, 'approve-late', 'owner', []],
    ['never by the customer, who sees that it lapsed', {}, 'approve-late', 'customer', ['wrong-person']],
    ['nor by the clock', { stage: 'assessing' }, 'decline-late', 'clock', ['wrong-person']],
    [
      'not once something has overtaken it',
      { hasLapsedPrice: false },
      'approve-late',
      'staff',
      ['price-lapsed'],
    ],
    ['nor as a no', { stage: 'assessing', hasLapsedPrice: false }, 'decline-late', 'staff', ['price-lapsed']],
    [
      'nor as a no to the rest',
      { kind: 'claim', stage: 'assessing', ruling: 'partly', hasLapsedPrice: false },
      'decline-the-rest-late',
      'staff',
      ['price-lapsed'],
    ],
    ['not of a unit that has left', { stage: 'sent-back' }, 'approve-late', 'staff', ['wrong-stage']],
    ['as a no while the work is not done', { stage: 'on-bench' }, 'decline-late', 'staff', []],
    ['and not after it', { stage: 'proving' }, 'decline-late', 'staff', ['wrong-stage']],
    [
      'as a no that sends nothing covered back',
      { kind: 'claim', stage: 'assessing', ruling: 'partly' },
      'decline-late',
      'staff',
      ['nothing-covered'],
    ],
    [
      'but leaves the rest as it is',
      { kind: 'claim', stage: 'assessing', ruling: 'partly' },
      'decline-the-rest-late',
      'staff',
      [],
    ],
  ])('an answer is written down after its price lapsed %s', (_name, over, key, by, reasons) => {
    const answer = mayMove(key, { ...READY, hasLapsedPrice: true, ...over }, by);
    expect(answer.allowed ? [] : answer.reasons).toEqual(reasons);
  });

  it.each([
    ['accepted', 'partly', 'assessing', 'approve-late', 'on-bench'],
    ['accepted', 'partly', 'proving', 'approve-late', 'on-bench'],
    ['accepted', 'partly', 'awaiting-parts', 'approve-late-waiting', 'awaiting-parts'],
    ['declined', 'partly', 'assessing', 'decline-the-rest-late', 'on-bench'],
    ['declined', 'partly', 'awaiting-parts', 'decline-the-rest-late-waiting', 'awaiting-parts'],
    ['declined', 'not-covered', 'on-bench', 'decline-late', 'declined'],
    ['declined', 'not-covered', 'awaiting-parts', 'decline-late', 'declined'],
  ] as const)(
    '%s of a claim ruled %s at %s is the move %s then, to %s',
    (decision, ruling, stage, key, to) => {
      const facts = { ...READY, kind: 'claim', ruling, stage, hasLapsedPrice: true } as const;
      expect(lateAnswerMove(decision, facts)).toBe(key);
      expect(moveOf(key).to).toBe(to);
      expect(mayMove(key, facts, 'staff')).toEqual({ allowed: true });
    },
  );

  it.each([
    ['accepted', 'approve-late'],
    ['declined', 'decline-late'],
  ] as const)(
    '%s of a price for another repair, of a job that waits for a part, is the move %s then',
    (decision, key) => {
      const facts = { ...READY, stage: 'awaiting-parts', isRepaired: false, hasLapsedPrice: true } as const;
      expect(lateAnswerMove(decision, facts, { isOtherRepair: true })).toBe(key);
      expect(mayMove(key, facts, 'staff')).toEqual({ allowed: true });
    },
  );

  it('a screen shows nobody a move that is for somebody else, at another stage or of another kind of job', () => {
    for (const stage of STAGES)
      for (const kind of ['repair', 'claim'] as const)
        for (const by of ['customer', 'staff', 'owner', 'clock'] as const) {
          const shown = openMoves({ ...READY, stage, kind }, by);
          const reasons = shown.flatMap(({ answer }) => (answer.allowed ? [] : answer.reasons));
          for (const never of ['wrong-person', 'wrong-stage', 'wrong-kind'] as const)
            expect(reasons).not.toContain(never);
        }
    expect(openMoves(READY, 'customer')).toEqual([]);
    expect(openMoves(READY, 'clock').map(({ move }) => move.key)).toEqual(['set-aside']);
  });

  it('no sequence of moves leaves the table, whatever the facts', () => {
    const facts = fc.record<Omit<JobFacts, 'stage'>>({
      kind: fc.constantFrom('repair', 'claim'),
      isSerialSettled: fc.boolean(),
      findings: fc.nat(2),
      hasOpenOffer: fc.boolean(),
      hasAgreedPaidOffer: fc.boolean(),
      isPriceAgreed: fc.boolean(),
      isContractMade: fc.boolean(),
      ruling: fc.constantFrom(null, 'covered', 'partly', 'not-covered', 'returned-free'),
      workEntries: fc.nat(2),
      checksFailed: fc.nat(1),
      checksMissing: fc.nat(1),
      owed: fc.integer({ min: -1, max: 1 }),
      withdrawUntil: fc.constantFrom(null, day('2026-12-15')),
      isStartAllowed: fc.boolean(),
      mayWithdraw: fc.boolean(),
      isRepaired: fc.boolean(),
      isHandoverNamed: fc.boolean(),
      isGone: fc.boolean(),
      isSought: fc.boolean(),
      isWalkIn: fc.boolean(),
      isUntouched: fc.boolean(),
      hasMoney: fc.boolean(),
      isWithCarrier: fc.boolean(),
      hasLeft: fc.boolean(),
      mayContest: fc.boolean(),
      isNoHeld: fc.boolean(),
      hasLapsedPrice: fc.boolean(),
    });
    const by = fc.constantFrom<MoveBy>('customer', 'staff', 'owner', 'clock');
    const walk = fc.array(fc.tuple(facts, by, fc.nat()), { maxLength: 30 });
    let moved = 0;
    fc.assert(
      fc.property(walk, (steps) => {
        let stage: Stage = 'booked';
        for (const [held, who, pick] of steps) {
          const open: ReturnType<typeof openMoves> = openMoves({ ...held, stage }, who).filter(
            ({ answer }) => answer.allowed,
          );
          const taken: (typeof open)[number] | undefined = open[pick % Math.max(1, open.length)];
          if (!taken) continue;
          expect(moveOf(taken.move.key).from).toContain(stage);
          stage = taken.move.to;
          moved += 1;
          expect(STAGES).toContain(stage);
        }
      }),
      { numRuns: 500 },
    );
    expect(moved).toBeGreaterThan(300);
  });
});
