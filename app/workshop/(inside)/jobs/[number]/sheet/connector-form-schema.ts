import { z } from 'zod';
import { optionalText } from '@/lib/jobs/rules/typed-text';

const FIELD = 'probe-';
/** An answer is a number or a word; what is longer is refused as no answer, so that its end may be lost. */
const MOST_LETTERS = 60;

/** A connector sheet as posted: the answers by the probe's key, and a note. */
export const connectorForm = z.looseObject({ note: optionalText(500) }).transform(({ note, ...rest }) => ({
  note,
  probes: new Map(
    Object.entries(rest).flatMap(([name, value]) =>
      name.startsWith(FIELD) && typeof value === 'string'
        ? [[name.slice(FIELD.length), value.slice(0, MOST_LETTERS)] as const]
        : [],
    ),
  ),
}));
