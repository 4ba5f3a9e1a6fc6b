import type { ReactNode } from 'react';
import { marksText, type PhotoMark } from '@/lib/jobs/rules/photo-marks';
import { PhotoMarks } from './photo-marks';

export type PhotoProps = {
  src: string;
  alt: string;
  width: number;
  height: number;
  caption?: ReactNode;
  full?: string | undefined;
  /** places pointed at */
  marks?: readonly PhotoMark[] | undefined;
};

/**
 * One photo with its caption; `full` is where a tap leads. Width and height are those of the file, so that nothing
 * jumps when it arrives.
 *
 * ```tsx
 * <Photo src="/files/p1/small" full="/files/p1" alt="Jack socket, cracked at the collar" width={640} height={480}
 *   caption="Arrival, 1 Dec 2026, 09:42" />
 * ```
 */
export function Photo({ src, alt, width, height, caption, full, marks = [] }: PhotoProps) {
  const image = (
    <span className="photo-box">
      {/* biome-ignore lint/performance/noImgElement: photos are private files behind a route, sized when they are stored */}
      <img src={src} alt={alt} width={width} height={height} loading="lazy" decoding="async" />
      <PhotoMarks marks={marks} width={width} height={height} />
    </span>
  );
  return (
    <figure className="photo">
      {full ? <a href={full}>{image}</a> : image}
      {caption || marks.length > 0 ? (
        <figcaption>
          {caption}
          {marks.length > 0 ? <span className="photo-says">{marksText(marks)}</span> : null}
        </figcaption>
      ) : null}
    </figure>
  );
}

/**
 * Photos side by side, wrapping.
 *
 * ```tsx
 * <PhotoStrip label="Photos on arrival" photos={photos} />
 * ```
 */
export function PhotoStrip({ label, photos }: { label: string; photos: readonly PhotoProps[] }) {
  if (photos.length === 0) return null;
  return (
    <ul className="photo-strip" aria-label={label}>
      {photos.map((photo) => (
        <li key={photo.src}>
          <Photo {...photo} />
        </li>
      ))}
    </ul>
  );
}
