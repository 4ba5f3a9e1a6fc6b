import type { PhotoMark } from '@/lib/jobs/rules/photo-marks';

type MarksProps = { marks: readonly PhotoMark[]; width: number; height: number };

/** Numbered marks over a photo; what they say stands in words under it. The photo is cut as `object-fit: cover` cuts it. */
export function PhotoMarks({ marks, width, height }: MarksProps) {
  if (marks.length === 0) return null;
  const size = Math.min(width, height) / 14;
  return (
    <svg
      className="photo-marks"
      viewBox={`0 0 ${width} ${height}`}
      preserveAspectRatio="xMidYMid slice"
      aria-hidden="true"
    >
      {marks.map((mark, at) => (
        <g key={`${mark.x} ${mark.y}`} transform={`translate(${mark.x * width} ${mark.y * height})`}>
          <circle r={size} strokeWidth={size / 6} />
          <text fontSize={size * 1.2} y={size * 0.42}>
            {at + 1}
          </text>
        </g>
      ))}
    </svg>
  );
}
