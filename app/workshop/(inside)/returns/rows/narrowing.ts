import { z } from 'zod';
import { may, type Permission, type Role } from '@/lib/people/rules/roles';
import { GROUPINGS, type Grouping, type Narrowing } from '@/lib/returns/groupings';

/** How rows are narrowed in an address; what is not understood narrows nothing. */
export const rowsAsked = z.object({
  by: z.enum(GROUPINGS).optional().catch(undefined),
  id: z.string().min(1).max(200).optional().catch(undefined),
  month: z
    .string()
    .regex(/^\d{4}-(0[1-9]|1[0-2])$/)
    .optional()
    .catch(undefined),
  only: z.literal('returns').optional().catch(undefined),
});

export type RowsAsked = z.output<typeof rowsAsked>;

export function readRowsAsked(search: Record<string, unknown>): RowsAsked {
  return rowsAsked.parse(search);
}

export function narrowingOf({ by, id, month, only }: RowsAsked): Narrowing {
  return {
    of: by && id ? { grouping: by, id } : undefined,
    month,
    onlyReturns: only === 'returns',
  };
}

/** The same rows at another address: the next page, or the file. */
export function queryOf(asked: RowsAsked, more: Record<string, string> = {}): '' | `?${string}` {
  const given = Object.entries({ ...asked, ...more }).filter(([, value]) => value !== undefined);
  const text = new URLSearchParams(given as [string, string][]).toString();
  return text === '' ? '' : `?${text}`;
}

/** Rows told by who did the work are for those who may see people's figures. */
export function permissionFor(grouping: Grouping | undefined): Permission {
  return grouping === 'technician' ? 'returns-people' : 'returns';
}

/** What a role sees of each row beside the plain facts. */
export function depthOf(role: Role, currency: string) {
  return { currency, hasCost: may(role, 'returns-cost'), hasPeople: may(role, 'returns-people') };
}
