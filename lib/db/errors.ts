import { z } from 'zod';

// What Prisma 7 with adapter-pg throws, seen on PostgreSQL 15 and PGlite: the SQLSTATE sits in the driver's cause,
// either under meta (queries) or directly (COMMIT).
const cause = z.object({
  originalCode: z.string().optional(),
  kind: z.string().optional(),
  constraint: z.object({ index: z.string().optional(), fields: z.array(z.string()).optional() }).optional(),
});
const thrown = z.object({
  code: z.string().optional(),
  meta: z.object({ driverAdapterError: z.object({ cause }).optional() }).optional(),
  cause: cause.optional().catch(undefined),
});

function readCause(error: unknown): z.output<typeof cause> | undefined {
  const parsed = thrown.safeParse(error);
  if (!parsed.success) return undefined;
  return parsed.data.meta?.driverAdapterError?.cause ?? parsed.data.cause;
}

/** True when a unique index refused the write; with `constraint`, only when it was the index of that name. */
export function isUniqueViolation(error: unknown, constraint?: string): boolean {
  const found = readCause(error);
  if (found?.originalCode !== '23505') return false;
  return constraint === undefined || found.constraint?.index === constraint;
}

/** True when PostgreSQL gave up this transaction for another's sake: 40001 serialization failure, 40P01 deadlock. */
export function isConflict(error: unknown): boolean {
  const code = readCause(error)?.originalCode;
  return code === '40001' || code === '40P01';
}

/**
 * True when a transaction got no connection in time, or was given up half way for taking too long (Prisma's P2028, which
 * has other meanings too). Either way nothing of it was kept.
 */
export function isOutOfTime(error: unknown): boolean {
  const isLate =
    /Unable to start a transaction in the given time|cannot be executed on an expired transaction/;
  return (
    thrown.safeParse(error).data?.code === 'P2028' && error instanceof Error && isLate.test(error.message)
  );
}
