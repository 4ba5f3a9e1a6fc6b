import type { StampState } from '@/lib/jobs/rules/run-of-stamps';
import { Mark, type MarkShape } from '../marks';

export type Stamp = {
  key: string;
  label: string;
  state: StampState;
  on?: string | undefined;
};

const WORDS: Record<StampState, { word: string; shape: MarkShape }> = {
  done: { word: 'done', shape: 'tick' },
  now: { word: 'here now', shape: 'arrow' },
  waiting: { word: 'to come', shape: 'ring' },
  skipped: { word: 'not needed', shape: 'dash' },
  stopped: { word: 'stopped', shape: 'stop' },
};

/**
 * The run of stamps: one per stage in order, each told by word, shape and colour; `on` is the shown date.
 *
 * ```tsx
 * <Stamps steps={[{ key: 'booked', label: 'Booked', state: 'done', on: '28 Nov' },
 *   { key: 'bench', label: 'On the bench', state: 'now', on: '1 Dec' },
 *   { key: 'return', label: 'Sent back', state: 'waiting' }]} />
 * ```
 */
export function Stamps({ steps, label = 'Stages' }: { steps: readonly Stamp[]; label?: string }) {
  return (
    <ol className="stamps" aria-label={label}>
      {steps.map((step) => {
        const { word, shape } = WORDS[step.state];
        return (
          <li
            key={step.key}
            className={`stamp stamp-${step.state}`}
            aria-current={step.state === 'now' ? 'step' : undefined}
          >
            <span className="stamp-face">
              <span className="stamp-label">{step.label}</span>
              <span className="stamp-word">
                <Mark shape={shape} />
                {word}
              </span>
              <span className="stamp-on">{step.on}</span>
            </span>
          </li>
        );
      })}
    </ol>
  );
}
