import encodeQr from 'qr';

/**
 * A QR code as one SVG path with the four-module quiet zone of ISO/IEC 18004, dark on light in both schemes so that
 * every scanner reads it. `alt` says what it opens.
 *
 * ```tsx
 * <Qr text="https://mend.example.org/j/J4K7QX29D" alt="QR code that opens this job" />
 * ```
 */
export function Qr({ text, alt }: { text: string; alt: string }) {
  const rows = encodeQr(text, 'raw', { ecc: 'medium', border: 4 });
  const size = rows.length;
  let path = '';
  for (const [y, row] of rows.entries()) {
    for (const [x, dark] of row.entries()) if (dark) path += `M${x} ${y}h1v1h-1z`;
  }
  return (
    <svg className="qr" viewBox={`0 0 ${size} ${size}`} role="img" aria-label={alt}>
      <path className="qr-ground" d={`M0 0h${size}v${size}H0z`} />
      <path className="qr-ink" d={path} shapeRendering="crispEdges" />
    </svg>
  );
}
