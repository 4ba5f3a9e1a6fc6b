import { z } from 'zod';
import { place } from './place';

/** With E2E_FLEET=on the walks are made on two instances and a worker behind a balancer (lib/commands/scale/fleet.ts). */
export const isFleet = process.env['E2E_FLEET'] === 'on';

const port = place.port + 10;
export const fleetSettings = { FLEET_PORT: String(port), LOG_LEVEL: 'info' };
const controls = `http://127.0.0.1:${port}`;

export const members = ['a', 'b', 'worker'] as const;
export type Member = (typeof members)[number];

/** What an instance has written to its log so far. */
export async function logOf(member: Member): Promise<string> {
  return (await fetch(`${controls}/log/${member}`)).text();
}

/** Tells an instance to stop, and starts it again. */
export async function restart(member: Member): Promise<{ code: number | null; ms: number }> {
  const answer = await fetch(`${controls}/restart/${member}`, { method: 'POST' });
  return z.object({ code: z.number().nullable(), ms: z.number() }).parse(await answer.json());
}

/** How many files the common store holds, and the names of those that lie in a folder of one instance alone. */
export async function keptFiles(): Promise<{ stored: number; own: string[] }> {
  const answer = await fetch(`${controls}/files`);
  return z.object({ stored: z.number(), own: z.array(z.string()) }).parse(await answer.json());
}

/** The lines of a log that are JSON; whatever else an instance writes is for whoever started it. */
export function linesOf(log: string): Record<string, unknown>[] {
  return log
    .split('\n')
    .filter((line) => line.startsWith('{'))
    .map((line) => z.record(z.string(), z.unknown()).parse(JSON.parse(line)));
}
