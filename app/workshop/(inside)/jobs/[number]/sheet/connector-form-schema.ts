import { z } from 'zod';

const FIELD = 'probe-';

/** A connector sheet as posted: the answers by the probe's key, and a note. */
export const connectorForm = z
  .looseObject({ note: z.string().trim().max(500, 'Keep this to 500 characters').optional().default('') })
  .transform(({ note, ...rest }) => ({
    note,
    probes: new Map(
      Object.entries(rest).flatMap(([name, value]) =>
        name.startsWith(FIELD) && typeof value === 'string'
          ? [[name.slice(FIELD.length), value] as const]
          : [],
      ),
    ),
  }));
