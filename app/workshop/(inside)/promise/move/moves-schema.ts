import { z } from 'zod';
import { countedField } from '@/app/ui/forms/counted-field';
import { type Day, isDay } from '@/lib/calendar/day';
import { typedText } from '@/lib/jobs/rules/typed-text';
import { readNumber } from '@/lib/numbers/job-number';

const TICK = 'move-';
/** More than this is no list of a bench. */
const MOST_MOVES = 200;

/** Fields of one row of the form, by the number of its job. */
export const fieldsOf = (number: string) => ({
  tick: `${TICK}${number}`,
  to: `to-${number}`,
  version: `version-${number}`,
});

/** Promises to be moved as posted: the rows that are ticked, each with its day and the version its job was shown at, and the reason. */
export const promisesForm = z
  .looseObject({
    reason: typedText('Tell these customers why', 500),
  })
  .transform(({ reason, ...rest }, ctx) => {
    const moves: { number: string; version: number; to: Day }[] = [];
    for (const name of Object.keys(rest)
      .filter((each) => each.startsWith(TICK))
      .slice(0, MOST_MOVES)) {
      const reading = readNumber(name.slice(TICK.length));
      if (!reading.ok) continue;
      const { number } = reading;
      const fields = fieldsOf(number);
      const version = countedField.safeParse(rest[fields.version]);
      const to = rest[fields.to];
      if (!version.success)
        ctx.addIssue({ code: 'custom', message: 'This form was not complete. Load the page again.' });
      else if (typeof to === 'string' && isDay(to)) moves.push({ number, version: version.data, to });
      else ctx.addIssue({ code: 'custom', path: [fields.to], message: 'Choose the new day' });
    }
    if (moves.length === 0 && ctx.issues.length === 0)
      ctx.addIssue({ code: 'custom', message: 'Tick the promises to be moved' });
    return { reason, moves };
  });
