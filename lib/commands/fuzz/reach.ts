import type { Plan } from './requests';
import type { Answer } from './send';

/**
 * How far a form got. carried out: the action led on, or said what it did. by a rule: it was read, and refused as a whole.
 * at a field: refused with sentences at fields. shown again: without script the page came back, which does not tell which
 * of these. turned away: the gate, the limits, or another page for whoever asked.
 */
export type Got = 'carried out' | 'by a rule' | 'at a field' | 'shown again' | 'turned away';

const GOT: readonly Got[] = ['carried out', 'by a rule', 'at a field', 'shown again', 'turned away'];

export function gotOf(plan: Plan, { status, headers, body }: Answer): Got {
  const to = headers['x-action-redirect'] ?? (status === 303 ? headers['location'] : undefined);
  if (to !== undefined) {
    return /\/workshop\/(sign-in(?!\?out)|not-yours|second-step)/.test(to) ? 'turned away' : 'carried out';
  }
  if (status !== 200) return 'turned away';
  if (plan.kind === 'without script') return 'shown again';
  const state = /^1:(\{.*\})$/m.exec(body)?.[1] ?? '{}';
  if (/"errors":\{"/.test(state)) return 'at a field';
  return /"(message|conflict)":["{]/.test(state) ? 'by a rule' : 'carried out';
}

export type Reach = {
  note: (plan: Plan, answer: Answer) => void;
  /** what was reached, in sentences, and which routes and actions were not asked at all */
  told: () => { lines: string[]; missed: string[] };
};

/** Counts which addresses were asked and how far the forms for each action got. `actions` are named by their ids. */
export function countReach(routes: readonly string[], actions: ReadonlyMap<string, string>): Reach {
  const asked = new Map(routes.map((route) => [route, 0]));
  const sent = new Map([...actions].map(([id, name]) => [id, { name, got: new Map<Got, number>() }]));
  return {
    note(plan, answer) {
      const action = sent.get(plan.actionId);
      if (!action) asked.set(plan.route, (asked.get(plan.route) ?? 0) + 1);
      else {
        const got = gotOf(plan, answer);
        action.got.set(got, (action.got.get(got) ?? 0) + 1);
      }
    },
    told() {
      const all = [...sent.values()];
      const without = (...ways: Got[]) => all.filter(({ got }) => !ways.some((way) => got.has(way)));
      const share = (missing: readonly unknown[], of: number) => `${of - missing.length} of ${of}`;
      const names = (some: typeof all) => some.map(({ name }) => name).join(', ') || 'none';
      const notAsked = routes.filter((route) => asked.get(route) === 0);
      const notSent = all.filter(({ got }) => got.size === 0);
      const notRead = without('carried out', 'by a rule');
      const notDone = without('carried out');
      const times = GOT.map((way) => `${all.reduce((sum, { got }) => sum + (got.get(way) ?? 0), 0)} ${way}`);
      return {
        lines: [
          `addresses asked: ${share(notAsked, routes.length)}, each at least ${Math.min(...routes.map((route) => asked.get(route) ?? 0))} times`,
          `forms: ${times.join(', ')}`,
          `actions sent a form: ${share(notSent, all.length)}; past its reading: ${share(notRead, all.length)}, not ${names(notRead)}`,
          `actions carried out: ${share(notDone, all.length)}, not ${names(notDone)}`,
        ],
        missed: [...notAsked, ...notSent.map(({ name }) => name)],
      };
    },
  };
}
