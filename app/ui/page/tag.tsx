import type { ReactNode } from 'react';
import { Mark, type MarkShape } from '../marks';

export type TagTone = 'plain' | 'now' | 'good' | 'warn' | 'stop' | 'note' | 'waiting';

const SHAPES: Record<TagTone, MarkShape> = {
  plain: 'hand',
  now: 'arrow',
  good: 'tick',
  warn: 'warn',
  stop: 'stop',
  note: 'note',
  waiting: 'ring',
};

/**
 * A state in one or two words: the word says it, shape and colour repeat it.
 *
 * ```tsx
 * <Tag tone="warn">late by 2 days</Tag>
 * ```
 */
export function Tag({ tone = 'plain', children }: { tone?: TagTone; children: ReactNode }) {
  return (
    <span className={`tag tag-${tone}`}>
      <Mark shape={SHAPES[tone]} />
      {children}
    </span>
  );
}
