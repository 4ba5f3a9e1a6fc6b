export type NamedProblem = 'unknown' | 'none' | 'fewer' | 'ended';

/**
 * Whether somebody may name the lines that were done again on a covered claim. Whoever did the work may name more of what still ran
 * than the symptom says; to leave out what it says, or to renew what had ended, is for the owner, since it takes cover away or
 * gives some anew. Null where nothing stands against it.
 *
 * Example: bench names [work-2] where the symptom says [work-1]: 'fewer'.
 */
export function namedProblem(o: {
  named: readonly string[];
  lines: readonly string[];
  /** what is renewed where nobody names anything */
  byRule: readonly string[];
  /** lines whose part was replaced: renewed whatever is named */
  fittedAgain: readonly string[];
  /** had ended when the claim was opened */
  ended: readonly string[];
  isOwner: boolean;
}): NamedProblem | null {
  const { named, byRule, fittedAgain } = o;
  if (named.some((id) => !o.lines.includes(id))) return 'unknown';
  if (named.length === 0 && fittedAgain.length === 0) return 'none';
  if (o.isOwner) return null;
  const renewed = new Set([...named, ...fittedAgain]);
  if (byRule.some((id) => !renewed.has(id))) return 'fewer';
  return named.some((id) => o.ended.includes(id) && !byRule.includes(id)) ? 'ended' : null;
}

export const NAMED_SENTENCES: Record<NamedProblem, string> = {
  unknown: 'The certificate has no such line. Load the page again.',
  none: 'Tick what was done again.',
  fewer: 'What the claim was opened for is renewed. Only the owner can leave it out.',
  ended: 'A line that had ended when the claim was opened is renewed by the owner alone.',
};
