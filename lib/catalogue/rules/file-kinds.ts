import type { ChecksPlan } from './plan-checks';
import type { ImportPlan } from './plan-import';
import type { PoliciesPlan } from './plan-policies';

/** The three files that the catalogue goes out and comes in as; which one a file is, its headings tell. */
export type FilePlans = { catalogue: ImportPlan; checks: ChecksPlan; policies: PoliciesPlan };
export type FileKind = keyof FilePlans;
export const FILE_KINDS = ['catalogue', 'checks', 'policies'] as const satisfies readonly FileKind[];

export type FilePlan = { [Kind in FileKind]: { kind: Kind; plan: FilePlans[Kind] } }[FileKind];
