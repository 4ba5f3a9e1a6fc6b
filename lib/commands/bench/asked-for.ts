import { parseArgs } from 'node:util';
import { z } from 'zod';
import { PARTS } from './measure-all';

const listOf = <T extends z.ZodType>(item: T) =>
  z.preprocess((text) => String(text).split(','), z.array(item).min(1));
const count = z.coerce.number().int().min(200);

const options = z.object({
  jobs: listOf(count).refine((sizes) => sizes.length === 2, 'two numbers: few jobs and many'),
  repairs: z.coerce.number().int().min(0),
  only: listOf(z.enum(PARTS)),
  database: listOf(z.enum(['server', 'embedded'])),
  app: z.string().optional(),
  port: z.coerce.number().int().min(1024).max(65_000),
});

/** What the command line asks to measure; ends the process with a sentence when it cannot be read. */
export function readAsked(): z.infer<typeof options> {
  const { values } = parseArgs({
    options: {
      jobs: { type: 'string', default: '1000,100000' },
      repairs: { type: 'string', default: '5000' },
      only: { type: 'string', default: PARTS.join(',') },
      database: { type: 'string', default: 'server,embedded' },
      app: { type: 'string' },
      port: { type: 'string', default: '3160' },
    },
  });
  const read = options.safeParse(values);
  if (read.success) return read.data;
  for (const { path, message } of read.error.issues) console.error(`--${path[0]?.toString()}: ${message}`);
  process.exit(1);
}
