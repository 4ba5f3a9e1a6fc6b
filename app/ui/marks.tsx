export type MarkShape = 'tick' | 'arrow' | 'ring' | 'dash' | 'stop' | 'warn' | 'note' | 'hand';

const SHAPES: Record<MarkShape, React.ReactNode> = {
  tick: <path d="M3 10.5 8 15.5 17 4.5" fill="none" stroke="currentColor" strokeWidth="3" />,
  arrow: <path d="M3 3 17 10 3 17Z" fill="currentColor" />,
  ring: (
    <circle
      cx="10"
      cy="10"
      r="7"
      fill="none"
      stroke="currentColor"
      strokeWidth="2"
      strokeDasharray="2.2 2.2"
    />
  ),
  dash: <path d="M3 10h14" fill="none" stroke="currentColor" strokeWidth="3" />,
  stop: (
    <>
      <path d="M6 1h8l5 5v8l-5 5H6l-5-5V6Z" fill="currentColor" />
      <path className="mark-cut" d="M6 6l8 8M14 6l-8 8" fill="none" strokeWidth="2.4" />
    </>
  ),
  warn: (
    <>
      <path d="M10 1 19.5 18.5H.5Z" fill="currentColor" />
      <path className="mark-cut" d="M10 7v5.4M10 14v2.4" fill="none" strokeWidth="2.4" />
    </>
  ),
  note: (
    <>
      <path d="M1 1h18v18H1Z" fill="currentColor" />
      <path className="mark-cut" d="M10 4v2.6M10 8.4V16" fill="none" strokeWidth="2.6" />
    </>
  ),
  hand: <path d="M10 1.5 18.5 10 10 18.5 1.5 10Z" fill="none" stroke="currentColor" strokeWidth="2.6" />,
};

/** A small drawn shape that stands beside a state word; it carries no meaning of its own to a screen reader. */
export function Mark({ shape }: { shape: MarkShape }) {
  return (
    <svg className="mark" viewBox="0 0 20 20" aria-hidden="true" focusable="false">
      {SHAPES[shape]}
    </svg>
  );
}
