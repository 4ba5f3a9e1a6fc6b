import { z } from 'zod';
import type { CheckResult } from '@/lib/bench/record-check';
import { readMeter } from '@/lib/bench/rules/checks';

type Texts = (name: string) => string;
const uuid = z.uuid();

/** Posted fields by name, each as one trimmed text. */
export function textsOf(values: Record<string, string | string[]>): Texts {
  return (name) => {
    const value = values[name];
    return (Array.isArray(value) ? value[0] : value)?.trim() ?? '';
  };
}

/**
 * What a posted sheet enters: the check whose button was pressed, filled in or not, or every one that is filled in when the button
 * was the form's own. Connector sheets have a page of their own.
 */
export function readResults(
  checks: readonly { id: string; kind: string }[],
  texts: Texts,
  asked: string,
): CheckResult[] {
  return checks
    .filter((check) => check.kind !== 'connector')
    .filter((check) => (asked === 'all' ? isFilled(check.id, texts) : check.id === asked))
    .map(({ id, kind }) => {
      const tick = texts(`tick-${id}`);
      const over = texts(`over-${id}`) === 'yes';
      const meter = readMeter(texts(`reading-${id}`));
      const entryId = uuid.safeParse(texts(`entry-${id}`));
      return {
        checkId: id,
        given: {
          ...(kind === 'tick' && tick !== '' && { tick: tick === 'pass' }),
          reading: meter?.reading ?? null,
          ...(meter && (over || meter.isOverRange) && { isOverRange: true }),
          choice: texts(`choice-${id}`) || null,
        },
        note: texts(`note-${id}`),
        entryId: entryId.success ? entryId.data : undefined,
      };
    });
}

function isFilled(id: string, texts: Texts): boolean {
  return ['tick', 'reading', 'choice'].some((kind) => texts(`${kind}-${id}`) !== '');
}
