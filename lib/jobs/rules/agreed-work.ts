import { isEventKind, parseEvent } from './events';

/*
 * Words of these rules.
 * change: a time that a job was put under another repair.
 * labour: the words of what is done, of a price that was agreed.
 * instead: of work that is done in the place of what a line says, since its job was put under another repair.
 */

export type Change = {
  at: Date;
  from: string;
  formerly: readonly string[];
  minutesBefore?: number | undefined;
};

/** Each time a job was put under another repair, in the order of its history. */
export function repairChanges(events: readonly { kind: string; data: unknown; at: Date }[]): Change[] {
  return events.flatMap(({ kind, data, at }) => {
    const event = kind === 'repair-changed' ? parseEvent(kind, data) : null;
    return event?.kind === 'repair-changed' ? [{ ...event.data, at }] : [];
  });
}

type Names = { name: string; formerNames: readonly string[] };

function allNames({ name, formerNames }: Names): string[] {
  return [name, ...formerNames];
}

/** A price that was agreed, with the words of its labour, and the repair that its job is under by now. */
export type AgreedPrice = { agreedAt: Date | null; labour: readonly string[]; under: Names };

/** The same of its lines: labour that costs nothing is no work of its own. */
export function agreedPrice(o: {
  agreedAt: Date | null;
  lines: readonly { kind: string; description: string; amount: number }[];
  under: Names;
}): AgreedPrice {
  const labour = o.lines.filter(({ kind, amount }) => kind === 'labour' && amount > 0);
  return { agreedAt: o.agreedAt, labour: labour.map(({ description }) => description), under: o.under };
}

/** Each time since a price was agreed; the one that a yes makes is as old as the price. */
export function changesSince(changes: readonly Change[], agreedAt: Date | null): Change[] {
  return changes.filter(({ at }) => agreedAt === null || at > agreedAt);
}

/**
 * The changes since a price was agreed by which a line of it came to stand for other work than it says; `changes` are all there were, in
 * order. Where one of them put the job under a repair that the price names, or back under the one it was agreed under, the repair has a
 * line of its own, and so has every other: only later changes count then.
 *
 * Agreed on 1 December: ['Battery replaced'], on 2 December put under 'Display replaced' -> that change;
 * agreed: ['Battery replaced', 'Display replaced'] -> []
 */
export function changesInstead(
  changes: readonly Change[],
  { agreedAt, labour, under }: AgreedPrice,
): Change[] {
  const since = changesSince(changes, agreedAt);
  const lastOwn = since.findLastIndex((_, i) => {
    const next = since[i + 1];
    const to = next ? [next.from, ...next.formerly] : [under.name, ...under.formerNames];
    return to.some((name) => labour.includes(name) || name === since[0]?.from);
  });
  return since.slice(lastOwn + 1);
}

/**
 * The names of the repair a job was under when its price was agreed, where the job is under another by now and the price has lines for
 * both, so that both are paid for. Otherwise [].
 */
export function agreedBeside(changes: readonly Change[], price: AgreedPrice): string[] {
  const [first] = changesSince(changes, price.agreedAt);
  if (!first || changesInstead(changes, price)[0] === first) return [];
  const { name, formerNames } = price.under;
  return [name, ...formerNames].includes(first.from) ? [] : [first.from, ...first.formerly];
}

/** The names of the repairs a job was under before each of these changes: a price may bear them for what was done. */
export function namesBefore(changes: readonly Change[]): string[] {
  return [...new Set(changes.flatMap(({ from, formerly }) => [from, ...formerly]))];
}

/**
 * The names of the repairs whose sheets were left out since a price was agreed, and that the job was neither under nor proved on after
 * that. Events in their order.
 */
export function namesLeftOut(
  events: readonly { kind: string; data: unknown; at: Date }[],
  agreedAt: Date | null,
): Set<string> {
  const left = new Set<string>();
  for (const { kind, data, at } of events) {
    if (!isEventKind(kind) || (agreedAt !== null && at <= agreedAt)) continue;
    const event = parseEvent(kind, data);
    if (event.kind === 'sheet-beside-removed') left.add(event.data.repair);
    if (event.kind === 'sheet-beside-added') left.delete(event.data.repair);
    if (event.kind === 'repair-changed')
      for (const name of [event.data.from, ...event.data.formerly, event.data.to]) left.delete(name);
  }
  return left;
}

/**
 * What an agreed price names, in words that a repair of the catalogue may bear, without those that stand for other work by now. Words of
 * its own stand for the repair that the job was under when it was agreed, where the price names the one it is under since and nothing
 * names the one before. `known` are the names of all repairs of the model.
 *
 * Under 'Display replaced' since, agreed as ['Battery glued in', 'Display replaced'] under 'Battery replaced' -> these and 'Battery replaced'
 */
export function namesAgreed(
  changes: readonly Change[],
  price: AgreedPrice,
  known: ReadonlySet<string>,
): string[] {
  const instead = namesBefore(changesInstead(changes, price));
  const named = price.labour.filter((words) => !instead.includes(words));
  const first = agreedBeside(changes, price);
  const isFirstInOwnWords =
    !named.some((words) => first.includes(words)) && named.some((words) => !known.has(words));
  return isFirstInOwnWords ? [...named, ...first] : named;
}

/**
 * The repairs of a job's model that an agreed price names, in the order given, without the one that the job is under (`underId`).
 *
 * Under 'Display replaced' since, agreed as ['Battery replaced', 'Display replaced'] -> that of 'Battery replaced'
 */
export function repairsAgreed<R extends Names & { id: string }>(
  repairs: readonly R[],
  o: { changes: readonly Change[]; price: AgreedPrice; underId: string },
): R[] {
  const names = new Set(namesAgreed(o.changes, o.price, new Set(repairs.flatMap(allNames))));
  return repairs.filter(
    (repair) => repair.id !== o.underId && allNames(repair).some((name) => names.has(name)),
  );
}

/** The repairs a job was under since a price was agreed, and that it names; with the bench minutes they were planned with then. */
export function agreedBefore(
  repairs: readonly Names[],
  { changes, price }: { changes: readonly Change[]; price: AgreedPrice },
): (Names & { minutes: number })[] {
  const names = new Set(namesAgreed(changes, price, new Set(repairs.flatMap(allNames))));
  return changesSince(changes, price.agreedAt)
    .map((change) => ({
      name: change.from,
      formerNames: change.formerly,
      minutes: change.minutesBefore ?? 0,
    }))
    .filter((before) => allNames(before).some((name) => names.has(name)));
}

/**
 * Those of `others`, in their order, that bear no name of a repair of `counted` or of one before them: repairs of two models may share
 * their names, and stand for one line of a price then.
 */
export function othersByName<R extends Names>(counted: readonly Names[], others: readonly R[]): R[] {
  const names = new Set(counted.flatMap(allNames));
  return others.filter((repair) => {
    const isNew = !allNames(repair).some((name) => names.has(name));
    for (const name of allNames(repair)) names.add(name);
    return isNew;
  });
}

/**
 * The bench minutes planned for what the agreed price is for in the place of the repair that the job is under now: those of the repair
 * before the first of the changes it stands for (`changesInstead`). `minutes` are those of the repair it is under.
 *
 * minutesAgreed([{ at: 2 December, from: 'Battery replaced', formerly: [], minutesBefore: 60 }], 20) -> 60
 */
export function minutesAgreed(instead: readonly Change[], minutes: number): number {
  return instead[0]?.minutesBefore ?? minutes;
}
