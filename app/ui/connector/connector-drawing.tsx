'use client';
import { type KeyboardEvent, type ReactNode, useRef, useState } from 'react';
import type { PinTable } from '@/lib/bench/rules/pin-table';
import { type Probe, type ProbeRead, probesOf, READ_WORDS, standingOf } from '@/lib/bench/rules/probes';
import { type Box, layOut } from './places';

type Reads = Readonly<Record<string, ProbeRead | undefined>>;

type DrawingProps = {
  table: PinTable;
  reads: Reads;
  /** With it pins and pairs are buttons, one stop of the Tab key with arrows between them. */
  onTap?: ((probe: Probe) => void) | undefined;
};

/**
 * The pins of a connector as they stand, seen from the solder side, each pin and each gap between neighbours marked by what it read.
 *
 * ```tsx
 * <ConnectorDrawing table={usbMicroB} reads={{ '1': 'through', '1:2': 'joined' }} />
 * ```
 */
export function ConnectorDrawing({ table, reads, onTap }: DrawingProps) {
  const probes = probesOf(table);
  const { width, height, pins, pairs } = layOut(table, probes);
  const probeOf = (key: string) => probes.find((probe) => probe.key === key);
  const [stop, setStop] = useState(0);
  const svg = useRef<SVGSVGElement>(null);
  const order = [
    ...pins.flatMap(({ pin }) => (pin.isUnused ? [] : [pin.pin])),
    ...pairs.map(({ probe }) => probe.key),
  ];

  const go = (event: KeyboardEvent, probe: Probe) => {
    const by = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 }[event.key];
    if (event.key === 'Enter' || event.key === ' ') onTap?.(probe);
    else if (by === undefined) return;
    else {
      const next = (order.indexOf(probe.key) + by + order.length) % order.length;
      setStop(next);
      svg.current?.querySelector<SVGGElement>(`[data-stop="${next}"]`)?.focus();
    }
    event.preventDefault();
  };
  const part = (probe: Probe, children: ReactNode) => {
    const standing = standingOf(probe, reads[probe.key]);
    const at = order.indexOf(probe.key);
    if (!onTap) {
      return (
        <g key={probe.key} className={`probe probe-${probe.kind}`} data-standing={standing}>
          {children}
        </g>
      );
    }
    return (
      // biome-ignore lint/a11y/useSemanticElements: a button cannot stand inside a drawing
      <g
        key={probe.key}
        role="button"
        tabIndex={at === stop ? 0 : -1}
        data-stop={at}
        className={`probe probe-${probe.kind} probe-live`}
        data-standing={standing}
        aria-label={`${probe.what}: ${readWord(reads[probe.key])}`}
        onClick={() => {
          setStop(at);
          onTap(probe);
        }}
        onKeyDown={(event) => go(event, probe)}
      >
        {children}
      </g>
    );
  };
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a wide connector scrolls, and keys must reach that
    <section className="connector-scroll" aria-label={`Pins of ${table.name}`} tabIndex={0}>
      <svg
        ref={svg}
        className="connector"
        viewBox={`0 0 ${width} ${height}`}
        width={width}
        height={height}
        role={onTap ? 'group' : 'img'}
        aria-label={`Drawing of ${table.name}, seen from the solder side. The list below holds the same.`}
      >
        {pairs.map(({ probe, box, arc }) =>
          part(
            probe,
            <>
              <title>{probe.what}</title>
              {arc ? <path className="connector-wire" d={arc} /> : <Wire box={box} />}
              <rect className="connector-target" {...box} />
              <State box={box} standing={standingOf(probe, reads[probe.key])} isPair />
            </>,
          ),
        )}
        {pins.map(({ pin, box }) => {
          const probe = probeOf(pin.pin);
          const face = (
            <>
              <title>{pin.name === '' ? pin.pin : `${pin.pin} ${pin.name}`}</title>
              <rect className="connector-pin" rx="2" {...box} />
              <text className="connector-number" x={box.x + box.width / 2} y={box.y + 18}>
                {pin.pin}
              </text>
              <State box={box} standing={standingOf({ mayBeJoined: false }, reads[pin.pin])} />
            </>
          );
          return probe ? (
            part(probe, face)
          ) : (
            <g key={pin.pin} className="probe probe-pin" data-standing="unused">
              {face}
            </g>
          );
        })}
      </svg>
    </section>
  );
}

function readWord(read: ProbeRead | undefined): string {
  return read === undefined ? 'no answer yet' : READ_WORDS[read];
}

function Wire({ box }: { box: Box }) {
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  const d = box.width < box.height ? `M${box.x} ${y}h${box.width}` : `M${x} ${box.y}v${box.height}`;
  return <path className="connector-wire" d={d} />;
}

type StateProps = { box: Box; standing: ReturnType<typeof standingOf>; isPair?: boolean };

/** The state as a shape, so that it is not told by colour alone: tick, cross, dash, question mark. */
function State({ box, standing, isPair }: StateProps) {
  const x = box.x + box.width / 2;
  const y = isPair ? box.y + box.height / 2 : box.y + 33;
  if (standing === 'good' || standing === 'free')
    return <path className="connector-state" d={`M${x - 6} ${y}l4 4.5l8-9.5`} />;
  if (standing === 'bad')
    return <path className="connector-state" d={`M${x - 6} ${y - 6}l12 12M${x + 6} ${y - 6}l-12 12`} />;
  if (standing === 'unused') return <path className="connector-state" d={`M${x - 6} ${y}h12`} />;
  if (standing === 'not-reached')
    return (
      <text className="connector-ask" x={x} y={y + 6}>
        ?
      </text>
    );
  return null;
}
