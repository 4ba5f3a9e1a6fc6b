'use client';
import { type MouseEvent, type ReactNode, useRef, useState } from 'react';
import { cellOf, MOST_MARKS, markOf, type PhotoMark } from '@/lib/jobs/rules/photo-marks';
import { PhotoMarks } from './photo-marks';

type BoardProps = {
  src: string;
  alt: string;
  width: number;
  height: number;
  /** Marks the photo has. */
  marks: readonly PhotoMark[];
  /** The lines of the marks: fields column-N, row-N, x-N, y-N, text-N. */
  children: ReactNode;
};

/**
 * A photo to tap on: each tap fills the next empty line of the form below. The lines hold what counts and work alone, by keyboard
 * and without script; the drawing follows them.
 */
export function MarkBoard({ src, alt, width, height, marks, children }: BoardProps) {
  const [shown, setShown] = useState(marks);
  const [said, setSaid] = useState('');
  const lines = useRef<HTMLDivElement>(null);

  const field = (name: string, at: number) =>
    lines.current?.querySelector<HTMLInputElement | HTMLSelectElement>(`[name="${name}-${at}"]`) ?? null;
  const text = (name: string, at: number) => field(name, at)?.value ?? '';
  const look = () => {
    const found = Array.from({ length: MOST_MARKS }, (_, at) =>
      markOf({
        column: text('column', at),
        row: text('row', at),
        x: text('x', at),
        y: text('y', at),
        text: text('text', at),
      }),
    );
    setShown(found.filter((mark) => mark !== null));
  };
  const tap = (event: MouseEvent<HTMLElement>) => {
    const box = event.currentTarget.getBoundingClientRect();
    const point = {
      x: (event.clientX - box.left) / box.width,
      y: (event.clientY - box.top) / box.height,
    };
    const at = Array.from({ length: MOST_MARKS }, (_, line) => line).find(
      (line) => text('column', line) === '',
    );
    if (at === undefined) {
      setSaid(`A photo holds at most ${MOST_MARKS} marks. Empty a line first.`);
      return;
    }
    const { column, row } = cellOf(point);
    const filled = { column, row, x: point.x.toFixed(3), y: point.y.toFixed(3) };
    for (const [name, value] of Object.entries(filled)) {
      const target = field(name, at);
      if (target) target.value = value;
    }
    look();
    setSaid(`Mark ${at + 1} put at ${column}${row}. Say what it shows.`);
    field('text', at)?.focus({ preventScroll: true });
  };
  return (
    <>
      {/* biome-ignore lint/a11y/useKeyWithClickEvents lint/a11y/noStaticElementInteractions: the lines below do the same by keyboard */}
      <div className="mark-board" onClick={tap}>
        {/* biome-ignore lint/performance/noImgElement: private files behind a route, sized when they are stored */}
        <img src={src} alt={alt} width={width} height={height} />
        <PhotoMarks marks={shown} width={width} height={height} />
        <Grid />
      </div>
      <p role="status">{said}</p>
      <div ref={lines} onChange={look}>
        {children}
      </div>
    </>
  );
}

/** The names of columns and rows along the edges. */
function Grid() {
  return (
    <span className="mark-grid" aria-hidden="true">
      {['A', 'B', 'C', 'D', 'E', 'F', 'G', 'H'].map((column) => (
        <i key={column}>{column}</i>
      ))}
      {['1', '2', '3', '4', '5', '6'].map((row) => (
        <b key={row}>{row}</b>
      ))}
    </span>
  );
}
