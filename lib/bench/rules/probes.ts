import { connectorSheet, type PinPair } from './connector-sheet';
import type { Pin, PinTable } from './pin-table';

/*
 * Words of a connector sheet.
 * probe: one thing to measure, a pin to its far end or a pair of neighbours. read: what the meter said of it.
 * not reached: the tip did not get there; it proves nothing, so the sheet does not pass.
 * no circuit: a sound unit of this kind has nothing behind the pin, so that there is nothing to follow.
 */

export const PIN_READS = ['through', 'broken', 'not-reached', 'no-circuit'] as const;
export const PAIR_READS = ['open', 'joined', 'not-reached'] as const;
export type ProbeRead = (typeof PIN_READS)[number] | (typeof PAIR_READS)[number];

export type Probe = {
  /** 'A4' for a pin, 'A4:A5' for a pair. */
  key: string;
  kind: 'pin' | 'pair';
  pins: string[];
  /** In words: 'A4 VBUS', 'A4 VBUS and A5 CC1'. */
  what: string;
  /** A pair of one net: joined or open, both are right, and it may be left out. */
  mayBeJoined: boolean;
};

/** A probe with what it read, as an entry keeps it: whole, so that it can be read when the table is long retired. */
export type KeptProbe = Probe & { read: ProbeRead };

/** Everything to probe on a connector: the used pins first, then the pairs that must be open, then those of one net. */
export function probesOf(table: PinTable): Probe[] {
  const sheet = connectorSheet(table);
  return [...sheet.continuity.map(pinProbe), ...[...sheet.mustBeOpen, ...sheet.mayBeJoined].map(pairProbe)];
}

function pinProbe(pin: Pin): Probe {
  return { key: pin.pin, kind: 'pin', pins: [pin.pin], what: words(pin), mayBeJoined: false };
}

function pairProbe({ a, b, mayBeJoined }: PinPair): Probe {
  const what = `${words(a)} and ${words(b)}`;
  return { key: `${a.pin}:${b.pin}`, kind: 'pair', pins: [a.pin, b.pin], what, mayBeJoined };
}

const words = ({ pin, name }: Pin) => (name === '' ? pin : `${pin} ${name}`);

/** What a probe can read, the right reading first. */
export function readsOf(probe: Pick<Probe, 'kind'>): readonly ProbeRead[] {
  return probe.kind === 'pin' ? PIN_READS : PAIR_READS;
}

/** What a reading says of the connector; 'free' is a pair of one net, of which every reading is right, 'unused' a pin without a circuit. */
export function standingOf(
  probe: Pick<Probe, 'mayBeJoined'>,
  read: ProbeRead | undefined,
): 'good' | 'bad' | 'not-reached' | 'unused' | 'free' | 'none' {
  if (read === undefined) return 'none';
  if (probe.mayBeJoined) return 'free';
  if (read === 'not-reached') return 'not-reached';
  if (read === 'no-circuit') return 'unused';
  return read === 'through' || read === 'open' ? 'good' : 'bad';
}

export type ProbesAnswer =
  | { ok: true; isPassed: boolean; probes: KeptProbe[] }
  /** Probes without an answer, by key. */
  | { ok: false; missing: string[] };

/**
 * Whether a connector passes by what every probe read, and what of it is kept. It passes only when every pin that has a circuit in
 * this unit is through, at least one of them, and every pair of different nets is open; a probe that was not reached fails it. Refuses by value: a required probe without an answer,
 * or with one that its kind does not have. Example: USB Micro-B with 4:5 joined gives { ok: true, isPassed: false, probes: [9] }.
 */
export function judgeProbes(table: PinTable, given: ReadonlyMap<string, string>): ProbesAnswer {
  const answered = probesOf(table).map((probe) => ({
    probe,
    read: readsOf(probe).find((read) => read === given.get(probe.key)),
  }));
  const missing = answered.filter(({ probe, read }) => read === undefined && !probe.mayBeJoined);
  if (missing.length > 0) return { ok: false, missing: missing.map(({ probe }) => probe.key) };
  const probes = answered.flatMap(({ probe, read }) => (read === undefined ? [] : [{ ...probe, read }]));
  // A sheet of nothing but pins without a circuit proves nothing.
  const pins = probes.filter((probe) => probe.kind === 'pin');
  const isFollowed = pins.length === 0 || pins.some(isThrough);
  return { ok: true, isPassed: isFollowed && probes.every(isRight), probes };
}

function isRight(probe: KeptProbe): boolean {
  const standing = standingOf(probe, probe.read);
  return standing === 'good' || standing === 'free' || standing === 'unused';
}

const isThrough = ({ read }: KeptProbe) => read === 'through';
const hasNoCircuit = ({ read }: KeptProbe) => read === 'no-circuit';

/** A connector's entry in one line: '24 pins through, 29 of 30 pairs open'. */
export function probesLine(probes: readonly KeptProbe[]): string {
  const pins = probes.filter((probe) => probe.kind === 'pin' && !hasNoCircuit(probe));
  const pairs = probes.filter((probe) => probe.kind === 'pair' && !probe.mayBeJoined);
  const through = counted(pins.filter(isThrough).length, pins.length, 'pin', 'pins');
  const open = counted(pairs.filter(isRight).length, pairs.length, 'pair', 'pairs');
  return `${through} through, ${open} open`;
}

function counted(right: number, all: number, one: string, many: string): string {
  const noun = all === 1 ? one : many;
  return right === all ? `${all} ${noun}` : `${right} of ${all} ${noun}`;
}

/** A connector's entry line by line: the counts, the pins that have no circuit in this unit, then every fault. */
export function probesLines(probes: readonly KeptProbe[]): string[] {
  const unused = probes.filter(hasNoCircuit).map(({ what }) => what);
  return [
    probesLine(probes),
    ...(unused.length > 0 ? [`no circuit in this unit: ${unused.join(', ')}`] : []),
    ...probeFaults(probes),
  ];
}

/** Every probe that was not right, in words: 'A4 VBUS and A5 CC1 read joined', 'B7 D- was not reached'. */
export function probeFaults(probes: readonly KeptProbe[]): string[] {
  return probes
    .filter((probe) => !isRight(probe))
    .map((probe) => {
      if (probe.read === 'not-reached')
        return `${probe.what} ${probe.kind === 'pin' ? 'was' : 'were'} not reached`;
      return probe.kind === 'pin' ? `${probe.what} is not continuous` : `${probe.what} read joined`;
    });
}

/** What the meter said, in a word. */
export const READ_WORDS: Record<ProbeRead, string> = {
  through: 'through',
  broken: 'no path',
  open: 'open',
  joined: 'joined',
  'not-reached': 'not reached',
  'no-circuit': 'no circuit here',
};
