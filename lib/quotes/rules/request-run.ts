import type { RequestState } from './request-states';

export type RunState = 'done' | 'now' | 'waiting' | 'stopped';
export type RunStep = { key: string; label: string; state: RunState; at: Date | null };

/** How far along each state is, and the last step as it is stamped where the quote ended before the booking. */
const REACHED: Record<RequestState, { steps: number; end?: string }> = {
  asked: { steps: 0 },
  questioned: { steps: 0 },
  quoted: { steps: 1 },
  accepted: { steps: 2 },
  booked: { steps: 3 },
  declined: { steps: 1, end: 'Declined' },
  lapsed: { steps: 1, end: 'Lapsed' },
  'turned-down': { steps: 0, end: 'Turned down' },
};

const STEPS = [
  { key: 'asked', label: 'Price asked', kinds: ['asked'] },
  { key: 'sent', label: 'Price sent', kinds: ['sent'] },
  { key: 'accepted', label: 'Accepted', kinds: ['decided'] },
  { key: 'booked', label: 'Booked', kinds: ['booked'] },
] as const;

/**
 * The run of stamps of a quote that was asked for. A quote that ended early shows what it ended with after its last
 * step, and nothing to come.
 *
 * requestRun('quoted', [asked, sent]) -> asked done, sent now, accepted waiting, booked waiting
 */
export function requestRun(state: RequestState, events: readonly { kind: string; at: Date }[]): RunStep[] {
  const { steps: here, end } = REACHED[state];
  const when = (kinds: readonly string[]) => events.findLast(({ kind }) => kinds.includes(kind))?.at ?? null;
  const run = STEPS.map(({ key, label, kinds }, index): RunStep => {
    if (index > here) return { key, label, state: 'waiting', at: null };
    const isNow = index === here && end === undefined && state !== 'booked';
    return { key, label, state: isNow ? 'now' : 'done', at: when(kinds) };
  });
  if (end === undefined) return run;
  const ended: RunStep = { key: 'end', label: end, state: 'stopped', at: events.at(-1)?.at ?? null };
  return [...run.slice(0, here + 1), ended];
}
