import { mkdtempSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';

/** When every walk begins: a Tuesday morning in the demonstration workshop, winter time. */
export const openingTime = '2026-12-01T09:00:00.000Z';

// Playwright reads its settings once in each of its processes: the first one settles the folder for all, and clears it.
if (!process.env['E2E_FOLDER']) {
  const made = mkdtempSync(path.join(tmpdir(), 'mendpost-walk-'));
  process.env['E2E_FOLDER'] = made;
  process.on('exit', () => rmSync(made, { recursive: true, force: true }));
}
const folder = process.env['E2E_FOLDER'];
const port = Number(process.env['E2E_PORT'] ?? 3330);

/** Where the walks take place: one app with its own data, clock and post office, apart from any other on this machine. */
export const place = {
  dataDir: path.join(folder, 'data'),
  databaseUrl: process.env['E2E_DATABASE_URL'],
  clockFile: path.join(folder, 'clock'),
  port,
  origin: `http://127.0.0.1:${port}`,
  smtpPort: port + 1,
  mailboxPort: port + 2,
  mailbox: `http://127.0.0.1:${port + 2}/mails`,
};

/** Moves the clock of the running app. */
export function setClock(iso: string): void {
  if (Number.isNaN(Date.parse(iso))) throw new RangeError(`Not an instant: ${iso}`);
  // In one step: the app must never read a clock that is half written.
  writeFileSync(`${place.clockFile}.next`, iso);
  renameSync(`${place.clockFile}.next`, place.clockFile);
}
