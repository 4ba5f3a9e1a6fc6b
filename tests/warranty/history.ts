import { type Day, day, dayInZone } from '@/lib/calendar/day';
import type { WorkingCalendar } from '@/lib/calendar/working';
import { compareSerials } from '@/lib/numbers/serial';
import { type AssessedRevision, assess } from '@/lib/warranty/rules/assess';
import type { Ruling } from '@/lib/warranty/rules/causes';
import { countCover } from '@/lib/warranty/rules/cover';
import { explainCount } from '@/lib/warranty/rules/cover-sentences';
import type { Answer, NextStep, ReasonCode } from '@/lib/warranty/rules/reasons';
import { renewCover } from '@/lib/warranty/rules/renew';
import { isCoveredAtLeastPartly, mayContest, mayRule, type RulingDraft } from '@/lib/warranty/rules/ruling';
import type { CoverLine, HeldInterval, PolicyTerms } from '@/lib/warranty/rules/terms';

type Asks = {
  does: 'asks';
  symptom: string;
  /** As typed; the certificate's own when left out. */
  serial?: string;
  /** The revision on the paper in the customer's hand; the one in force when left out. */
  paper?: number;
  /** A number nobody issued, or a copy that was changed. */
  copy?: 'unknown' | 'changed';
  follows: {
    answer: Answer;
    step: NextStep['kind'] | null;
    reasons: ReasonCode[];
    /** Every day the reasons name, in their order. */
    days?: string[];
  };
};

/** One line of a history: a day (or an instant), what happened, and what must follow. */
export type Row = { on: string } & (
  | Asks
  | { does: 'opens a claim'; claim: string; follows: 'claim open' }
  | { does: 'hands in'; follows: 'held from here' }
  | {
      does: 'is ruled';
      draft: RulingDraft;
      follows: { ruling: Ruling; allowed: boolean; missing?: string[] };
    }
  | { does: 'contests'; follows: ReturnType<typeof mayContest> }
  | { does: 'gets back'; touched: string[]; follows: { revision: number; ends: Record<string, string> } }
  | { does: 'reads the count'; line: string; follows: string }
);

export type History = {
  title: string;
  unit: string;
  serial: string;
  zone: string;
  calendar: WorkingCalendar;
  terms: PolicyTerms;
  lines: CoverLine[];
  rows: Row[];
};

type State = {
  revisions: AssessedRevision[];
  held: HeldInterval[];
  openClaim: { number: string; openedOn: Day } | null;
  handedIn: Day | null;
  ruling: Ruling | null;
  timesContested: number;
};

/** Plays a history through the rules and returns what followed after each row, in the shape of the row's `follows`. */
export function play(history: History): unknown[] {
  const first = history.lines[0];
  if (first === undefined) throw new Error(`${history.title} has no cover line`);
  const state: State = {
    revisions: [{ revision: 1, issuedOn: first.startsOn, lines: history.lines }],
    held: [],
    openClaim: null,
    handedIn: null,
    ruling: null,
    timesContested: 0,
  };
  return history.rows.map((row) => {
    const today = row.on.includes('T') ? dayInZone(new Date(row.on), history.zone) : day(row.on);
    return happen(row, today, state, history);
  });
}

function happen(row: Row, today: Day, state: State, history: History): unknown {
  switch (row.does) {
    case 'asks':
      return asked(row, today, state, history);
    case 'opens a claim':
      if (state.openClaim !== null) return 'refused: one is open';
      state.openClaim = { number: row.claim, openedOn: today };
      state.ruling = null;
      state.timesContested = 0;
      return 'claim open';
    case 'hands in':
      state.handedIn = today;
      return 'held from here';
    case 'is ruled': {
      const decision = mayRule(row.draft);
      if (decision.allowed) state.ruling = decision.ruling;
      return {
        ruling: decision.ruling,
        allowed: decision.allowed,
        ...(decision.allowed ? {} : { missing: decision.missing }),
      };
    }
    case 'contests': {
      const answer = mayContest({ ruling: state.ruling ?? 'covered', timesContested: state.timesContested });
      state.timesContested += 1;
      return answer;
    }
    case 'gets back':
      return gotBack(row.touched, today, state, history);
    case 'reads the count': {
      const line = inForce(state).lines.find(({ id }) => id === row.line);
      if (line === undefined) throw new Error(`${history.title} has no line ${row.line}`);
      return explainCount(countCover(line, state.held, history.terms, history.calendar), 'en-GB');
    }
  }
}

function inForce(state: State): AssessedRevision {
  const last = state.revisions.at(-1);
  if (last === undefined) throw new Error('A history starts with a certificate');
  return last;
}

function asked(row: Asks, today: Day, state: State, history: History): Asks['follows'] {
  const newest = inForce(state);
  const paper = state.revisions.find(({ revision }) => revision === row.paper) ?? newest;
  const now: HeldInterval[] =
    state.handedIn === null || state.openClaim === null
      ? []
      : [{ from: state.handedIn, to: today, claimNumber: state.openClaim.number }];
  const { answer, nextStep, reasons } = assess({
    certificate:
      row.copy === 'unknown'
        ? null
        : {
            ...paper,
            number: 'W4K7QX29D',
            serial: history.serial,
            replacedBy: paper === newest ? null : newest,
          },
    signatureValid: row.copy !== 'changed',
    serial: compareSerials(history.serial, row.serial ?? history.serial),
    today,
    symptom: row.symptom,
    openClaim: state.openClaim,
    terms: history.terms,
    calendar: history.calendar,
    held: [...state.held, ...now],
  });
  return {
    answer,
    step: nextStep?.kind ?? null,
    reasons: reasons.map(({ code }) => code),
    ...(row.follows.days === undefined
      ? {}
      : {
          days: reasons.flatMap((reason) =>
            Object.values(reason).filter((value) => /^\d{4}-\d\d-\d\d$/.test(String(value))),
          ),
        }),
  };
}

function gotBack(touched: string[], today: Day, state: State, history: History) {
  if (state.handedIn === null || state.openClaim === null)
    throw new Error(`${history.title}: nothing was handed in on a claim`);
  const stay = { from: state.handedIn, to: today, claimNumber: state.openClaim.number };
  const newest = inForce(state);
  const { lines, endings, hasChanged } = renewCover({
    lines: newest.lines,
    touched,
    heldBefore: state.held,
    heldNow: stay,
    terms: history.terms,
  });
  const isRenewed = state.ruling !== null && isCoveredAtLeastPartly(state.ruling);
  if (isRenewed || hasChanged)
    state.revisions.push({ revision: newest.revision + 1, issuedOn: today, lines });
  state.held = [...state.held, stay];
  state.handedIn = null;
  state.openClaim = null;
  return {
    revision: inForce(state).revision,
    ends: Object.fromEntries(endings.map(({ lineId, now }) => [lineId, now])),
  };
}
