import type { ReactNode } from 'react';
import { Mark, type MarkShape } from '../marks';

export type NoticeKind = 'note' | 'warn' | 'stop' | 'good';

const WORDS: Record<NoticeKind, { word: string; shape: MarkShape }> = {
  note: { word: 'Note', shape: 'note' },
  warn: { word: 'Take care', shape: 'warn' },
  stop: { word: 'Stop', shape: 'stop' },
  good: { word: 'Done', shape: 'tick' },
};

type NoticeProps = {
  kind: NoticeKind;
  heading?: ReactNode;
  children: ReactNode;
  role?: 'status' | 'alert' | undefined;
};

/**
 * A paragraph that must not be missed; its kind is told by word, shape and colour. `heading` replaces the word.
 *
 * ```tsx
 * <Notice kind="warn" heading="Loose battery">
 *   <p>Do not post it if it is swollen. Take it to a collection point and tell us.</p>
 * </Notice>
 * ```
 */
export function Notice({ kind, heading, children, role }: NoticeProps) {
  const { word, shape } = WORDS[kind];
  return (
    <div className={`notice notice-${kind}`} role={role}>
      <span className="notice-stub">
        <Mark shape={shape} />
      </span>
      <div className="notice-body">
        <p className="notice-head">
          <strong>{heading ?? word}</strong>
        </p>
        {children}
      </div>
    </div>
  );
}
