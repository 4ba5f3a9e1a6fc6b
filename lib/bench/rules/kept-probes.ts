import { z } from 'zod';
import { type KeptProbe, PAIR_READS, PIN_READS } from './probes';

const keptProbe: z.ZodType<KeptProbe> = z.strictObject({
  key: z.string(),
  kind: z.enum(['pin', 'pair']),
  pins: z.array(z.string()),
  what: z.string(),
  mayBeJoined: z.boolean(),
  read: z.enum([...PIN_READS, ...PAIR_READS]),
});

/** The probes of a stored entry; none where the check is no connector sheet. Throws where a row does not fit. */
export function readKeptProbes(stored: unknown): KeptProbe[] {
  return stored === null || stored === undefined ? [] : z.array(keptProbe).parse(stored);
}
