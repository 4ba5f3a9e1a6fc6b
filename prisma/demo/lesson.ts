import { saveCheckSheet } from '@/lib/catalogue/save-check-sheet';
import { DEMO_REPAIRS } from './catalogue';

/** Puts the second version of every check sheet in force that has one; its new checks name the claim that taught them. */
export async function teachLesson(claimNumber: string, now: Date): Promise<void> {
  for (const repair of DEMO_REPAIRS) {
    const [first, second] = repair.sheets;
    if (!first || !second) continue;
    const known = new Set(first.checks.map((check) => check.label));
    await saveCheckSheet({
      repairId: repair.id,
      basedOn: first.version,
      change: () =>
        second.checks.map(({ id: _, position: __, ...check }) => ({
          ...check,
          lesson: known.has(check.label) ? null : claimNumber,
        })),
      now,
    });
  }
}
