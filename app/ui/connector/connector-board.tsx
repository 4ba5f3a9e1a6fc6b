'use client';
import { useContext, useEffect, useRef, useState, useSyncExternalStore } from 'react';
import type { PinTable } from '@/lib/bench/rules/pin-table';
import {
  type Probe,
  type ProbeRead,
  probesOf,
  READ_WORDS,
  readsOf,
  standingOf,
} from '@/lib/bench/rules/probes';
import { Problem } from '../forms/field-frame';
import { FormContext, firstOf, useField } from '../forms/form-context';
import { Mark } from '../marks';
import { ConnectorDrawing } from './connector-drawing';

type BoardProps = {
  table: PinTable;
  /** Every probe begins with the right reading; the person changes those that are not. */
  startsGood: boolean;
};

/**
 * The probes of a connector: its drawing, and a list with every probe that works alone, without script too. The fields are called
 * 'probe-' and the probe's key. The radio buttons hold what is chosen; the drawing shows them and presses them.
 */
export function ConnectorBoard({ table, startsGood }: BoardProps) {
  const { state } = useContext(FormContext);
  // A refused form is set back to what was posted, and the link that begins with all right leads to this very page: the key makes
  // the browser take either as a new start.
  return <Board key={JSON.stringify([startsGood, state.values])} table={table} startsGood={startsGood} />;
}

const fieldOf = (probe: Probe) => `probe-${probe.key}`;

function Board({ table, startsGood }: BoardProps) {
  const { state } = useContext(FormContext);
  const facts = useField('probes', false);
  const probes = probesOf(table);
  const start = (probe: Probe): ProbeRead | undefined => {
    if (state.values) return readOf(probe, firstOf(state.values[fieldOf(probe)]));
    return startsGood && !probe.mayBeJoined ? readsOf(probe)[0] : undefined;
  };
  const [reads, setReads] = useState<Record<string, ProbeRead | undefined>>(() =>
    Object.fromEntries(probes.map((probe) => [probe.key, start(probe)])),
  );
  const list = useRef<HTMLDivElement>(null);
  const scripted = useSyncExternalStore(
    () => () => {},
    () => true,
    () => false,
  );
  const look = () => {
    const chosen = new Map<string, string>();
    for (const box of list.current?.querySelectorAll<HTMLInputElement>('input:checked') ?? [])
      chosen.set(box.name, box.value);
    setReads(
      Object.fromEntries(probes.map((probe) => [probe.key, readOf(probe, chosen.get(fieldOf(probe)))])),
    );
  };
  // What was chosen before the script arrived counts.
  // biome-ignore lint/correctness/useExhaustiveDependencies: once, on arrival
  useEffect(look, []);

  const press = (probe: Probe, read: ProbeRead) => {
    const boxes = list.current?.querySelectorAll<HTMLInputElement>('input') ?? [];
    for (const box of boxes) if (box.name === fieldOf(probe) && box.value === read) box.checked = true;
  };
  const tap = (probe: Probe) => {
    const order = readsOf(probe);
    const now = reads[probe.key];
    const next = order[now === undefined ? 0 : (order.indexOf(now) + 1) % order.length];
    if (next) press(probe, next);
    look();
  };
  const fillGood = () => {
    for (const probe of probes) {
      const [good] = readsOf(probe);
      if (good && reads[probe.key] === undefined && !probe.mayBeJoined) press(probe, good);
    }
    look();
  };
  const required = probes.filter((probe) => !probe.mayBeJoined);
  const left = required.filter((probe) => reads[probe.key] === undefined).length;
  return (
    <div className={facts.problem ? 'field-wrong' : undefined} id={facts.id} tabIndex={-1}>
      <Problem facts={facts} />
      <ConnectorDrawing table={table} reads={reads} onTap={scripted ? tap : undefined} />
      {scripted ? (
        <div className="connector-aid">
          <p role="status">
            {left === 0
              ? 'Every probe has an answer.'
              : `${left} of ${required.length} probes have no answer yet.`}
          </p>
          <button type="button" className="button button-second" onClick={fillGood}>
            Mark what is left as right
          </button>
        </div>
      ) : null}
      <div ref={list} onChange={look}>
        <ProbeList
          heading="Every pin, from its contact to its far end"
          probes={probes.filter((probe) => probe.kind === 'pin')}
          start={start}
          idOf={(probe) => `${facts.id}-${probe.key}`}
        />
        <ProbeList
          heading="Neighbours that must read open"
          probes={required.filter((probe) => probe.kind === 'pair')}
          start={start}
          idOf={(probe) => `${facts.id}-${probe.key}`}
        />
        <ProbeList
          heading="Neighbours of one net: joined or open, both are right (optional)"
          probes={probes.filter((probe) => probe.mayBeJoined)}
          start={start}
          idOf={(probe) => `${facts.id}-${probe.key}`}
        />
      </div>
    </div>
  );
}

function readOf(probe: Probe, text: string | undefined): ProbeRead | undefined {
  return readsOf(probe).find((read) => read === text);
}

type ListProps = {
  heading: string;
  probes: readonly Probe[];
  start: (probe: Probe) => ProbeRead | undefined;
  idOf: (probe: Probe) => string;
};

function ProbeList({ heading, probes, start, idOf }: ListProps) {
  if (probes.length === 0) return null;
  return (
    <section className="probe-part">
      <h2>{heading}</h2>
      <div className="probe-list">
        {probes.map((probe) => (
          <fieldset key={probe.key} className="probe-row">
            <legend>{probe.what}</legend>
            {readsOf(probe).map((read) => (
              <div key={read} className="probe-choice" data-standing={standingOf(probe, read)}>
                <input
                  type="radio"
                  className="choice-box"
                  id={`${idOf(probe)}-${read}`}
                  name={fieldOf(probe)}
                  value={read}
                  defaultChecked={start(probe) === read}
                />
                <label htmlFor={`${idOf(probe)}-${read}`}>
                  <Mark shape={SHAPE[standingOf(probe, read)]} /> {READ_WORDS[read]}
                </label>
              </div>
            ))}
          </fieldset>
        ))}
      </div>
    </section>
  );
}

const SHAPE = {
  good: 'tick',
  free: 'tick',
  bad: 'stop',
  'not-reached': 'ring',
  unused: 'dash',
  none: 'ring',
} as const;
