import { FINAL_STAGES, MOVES, type Move, STAGES } from './stages';

/** Mermaid refuses hyphens in the names of states. */
const named = (stage: string) => stage.replaceAll('-', '_');

/**
 * The table of stages as a Mermaid state diagram, one line a move: from, to, the move and who may make it. The copy in
 * DEVELOPERS.md is compared with this by a test, so that the picture cannot fall behind the table.
 */
export function stageDiagram(): string {
  const lines = ['stateDiagram-v2'];
  for (const stage of STAGES) lines.push(`  ${named(stage)}: ${stage}`);
  lines.push(`  [*] --> ${named('booked')}`);
  for (const move of MOVES) {
    const { key, from, to, by, only }: Move & { key: string } = move;
    for (const stage of from) {
      lines.push(
        `  ${named(stage)} --> ${named(to)}: ${key} (${by.join(', ')})${only ? `, ${only} jobs` : ''}`,
      );
    }
  }
  for (const stage of FINAL_STAGES) lines.push(`  ${named(stage)} --> [*]`);
  return lines.join('\n');
}
