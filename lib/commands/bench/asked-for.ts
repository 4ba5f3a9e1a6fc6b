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
  // How many are drawn in a row; the heap is looked at after each hundred.
  certificates: count,
  database: listOf(z.enum(['server', 'embedded'])),
  app: z.string().optional(),
  port: z.coerce.number().int().min(1024).max(65_000),
});

const USUAL = {
  jobs: '1000,100000',
  repairs: '5000',
  only: PARTS.join(','),
  certificates: '1000',
  database: 'server,embedded',
};

/** What needs neither pages nor a browser: shows that it still works, and counts its statements. */
const SHORT: typeof USUAL = {
  jobs: '200,400',
  repairs: '200',
  only: 'booking,readings,certificates',
  certificates: '200',
  database: 'server',
};

/** What the command line asks to measure; ends the process with a sentence when it cannot be read. */
export function readAsked(): z.infer<typeof options> {
  const usual = process.argv.includes('--short') ? SHORT : USUAL;
  const { values } = parseArgs({
    options: {
      short: { type: 'boolean' },
      jobs: { type: 'string', default: usual.jobs },
      repairs: { type: 'string', default: usual.repairs },
      only: { type: 'string', default: usual.only },
      certificates: { type: 'string', default: usual.certificates },
      database: { type: 'string', default: usual.database },
      app: { type: 'string' },
      port: { type: 'string', default: '3160' },
    },
  });
  const read = options.safeParse(values);
  if (read.success) return read.data;
  for (const { path, message } of read.error.issues) console.error(`--${path[0]?.toString()}: ${message}`);
  process.exit(1);
}
