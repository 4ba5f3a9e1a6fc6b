/** A backup in the folder of backups, by its name. The program removes only those it made by itself, at night. */
export type BackupName = { file: string; madeAt: Date; isNightly: boolean };

const FORM = /^mendpost-(night-)?(\d{4}-\d{2}-\d{2})T(\d{2})(\d{2})(\d{2})Z\.tar$/;

/** nameOf(2026-11-25T03:00:04.120Z, true) -> 'mendpost-night-2026-11-25T030004Z.tar' */
export function nameOf(madeAt: Date, isNightly: boolean): string {
  const [day = '', time = ''] = madeAt.toISOString().split('T');
  return `mendpost-${isNightly ? 'night-' : ''}${day}T${time.slice(0, 8).replaceAll(':', '')}Z.tar`;
}

/** The list beside a backup of the files that are not in it as their rows say; there is none where all are. */
export function lackingOf(file: string): string {
  return `${file}.lacking`;
}

/** What the name of a file says; null for one that is no backup's name. */
export function readName(file: string): BackupName | null {
  const [whole, night, day, hours, minutes, seconds] = FORM.exec(file) ?? [];
  if (!whole) return null;
  const madeAt = new Date(`${day}T${hours}:${minutes}:${seconds}Z`);
  return Number.isNaN(madeAt.getTime()) ? null : { file, madeAt, isNightly: night !== undefined };
}
