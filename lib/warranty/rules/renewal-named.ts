export type NamedProblem = 'unknown' | 'none' | 'fewer' | 'ended';

/**
 * Whether somebody may name the lines that were done again on a covered claim. Whoever did the work may name more of what still ran
 * than the symptom says; to leave out what it says, or to renew what had ended, is for the owner, since it takes cover away or
 * gives some anew. What the owner has named stands in the place of the symptom then. Null where nothing stands against it.
 *
 * Example: bench names [work-2] where the symptom says [work-1]: 'fewer'.
 */
export function namedProblem(o: {
  named: readonly string[];
  lines: readonly string[];
  /** what is renewed where nobody names anything */
  byRule: readonly string[];
  /** what the owner named last; null where they have not */
  byOwner: readonly string[] | null;
  /** lines whose part was replaced: renewed whatever is named */
  fittedAgain: readonly string[];
  /** had ended when the claim was opened */
  ended: readonly string[];
  isOwner: boolean;
}): NamedProblem | null {
  const { named, fittedAgain } = o;
  if (named.some((id) => !o.lines.includes(id))) return 'unknown';
  if (standingNaming(named, fittedAgain) === null) return 'none';
  if (o.isOwner) return null;
  const renewed = new Set([...named, ...fittedAgain]);
  const least = standingNaming(o.byOwner, fittedAgain) ?? o.byRule;
  if (least.some((id) => !renewed.has(id))) return 'fewer';
  return named.some((id) => o.ended.includes(id) && !least.includes(id)) ? 'ended' : null;
}

/** What was named, where it still names something: nothing beside a part stands only while that part is fitted. */
export function standingNaming(
  named: readonly string[] | null,
  fittedAgain: readonly string[],
): readonly string[] | null {
  return named === null || named.length + fittedAgain.length === 0 ? null : named;
}

export const NAMED_SENTENCES: Record<NamedProblem, string> = {
  unknown: 'The certificate has no such line. Load the page again.',
  none: 'Tick what was done again.',
  fewer: 'What the claim was opened for, or the owner named, is renewed. Only the owner can leave it out.',
  ended: 'A line that had ended when the claim was opened is renewed by the owner alone.',
};
