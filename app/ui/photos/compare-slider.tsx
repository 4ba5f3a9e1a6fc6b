'use client';
import { useId, useState, useSyncExternalStore } from 'react';
import { Photo, type PhotoProps } from './photo';

type CompareProps = {
  before: PhotoProps;
  after: PhotoProps;
  label: string;
};

/**
 * Two photos of one place on the unit: side by side, or with script one over the other with a slider between them.
 *
 * ```tsx
 * <CompareSlider label="Jack socket, arrival and return" before={arrivalPhoto} after={returnPhoto} />
 * ```
 */
export function CompareSlider({ before, after, label }: CompareProps) {
  const scripted = useSyncExternalStore(
    never,
    () => true,
    () => false,
  );
  const [share, setShare] = useState(50);
  const id = useId();
  if (!scripted) {
    return (
      <section className="compare-pair" aria-label={label}>
        <Photo {...before} />
        <Photo {...after} />
      </section>
    );
  }
  const wide = Math.max(before.width, after.width);
  const high = Math.max(before.height, after.height);
  return (
    <section className="compare" aria-label={label}>
      <div className="compare-stage" style={{ aspectRatio: `${wide} / ${high}` }}>
        {/* biome-ignore lint/performance/noImgElement: private files behind a route, sized when they are stored */}
        <img src={after.src} alt={after.alt} />
        {/* biome-ignore lint/performance/noImgElement: private files behind a route, sized when they are stored */}
        <img src={before.src} alt={before.alt} style={{ clipPath: `inset(0 ${100 - share}% 0 0)` }} />
        <span className="compare-edge" style={{ insetInlineStart: `${share}%` }} />
      </div>
      <div className="compare-ends" aria-hidden="true">
        <span>{before.caption}</span>
        <span>{after.caption}</span>
      </div>
      <label htmlFor={id} className="sr-only">
        How much of the first photo is shown
      </label>
      <input
        id={id}
        type="range"
        min={0}
        max={100}
        value={share}
        className="compare-range"
        aria-valuetext={`${share} percent of the first photo`}
        onChange={(event) => setShare(event.currentTarget.valueAsNumber)}
      />
    </section>
  );
}

function never(): () => void {
  return () => {};
}
