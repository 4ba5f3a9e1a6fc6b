import { z } from 'zod';

/**
 * A hidden field that says when the row behind a form was last changed, as toISOString writes it, with a year from 1970.
 * JavaScript knows years that PostgreSQL's timestamps do not, and asked for one of those it fails.
 *
 * seenAtField.parse('2026-11-25T09:00:00.000Z') -> that instant; '-271821-04-20T00:00:00.000Z' is refused
 */
export const seenAtField = z.iso
  .datetime()
  .transform((text) => new Date(text))
  .refine((instant) => instant.getTime() >= 0);
