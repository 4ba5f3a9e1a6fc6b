import { type Fact, Facts } from '@/app/ui/docket/facts';
import { Notice } from '@/app/ui/page/notice';
import { LackingBackup } from '@/app/workshop/(inside)/lacking-backup';
import type { BackupsView, KeptBackup } from '@/lib/backup/records';
import { sizeInWords } from '@/lib/backup/rules/size';
import { formatInstant } from '@/lib/calendar/format';
import type { WorkshopCard } from '@/lib/workshop/card';

/** When everything was saved last, when it will be next, and how it comes back. */
export function BackupsPart({ backups, workshop }: { backups: BackupsView; workshop: WorkshopCard }) {
  const { nightly, keep, folder } = backups;
  const { locale, timeZone: zone } = workshop;
  const instant = (at: Date) => formatInstant(at, { locale, zone });
  const told = (each: KeptBackup | undefined) => each && `${instant(each.madeAt)}, ${sizeInWords(each.size)}`;
  const facts: Fact[] = [
    { term: 'Last by night', text: told(backups.backups.find(({ isNightly }) => isNightly)) ?? 'none yet' },
    { term: 'Last by hand', text: told(backups.backups.find(({ isNightly }) => !isNightly)) ?? 'none yet' },
    { term: 'Next', text: nightly ? instant(nightly.next) : 'none by itself: BACKUP_AT is off' },
    { term: 'There are', text: String(backups.backups.length) },
    {
      term: 'Kept by night',
      text: nightly && `the last of ${keep.days} days, ${keep.weeks} weeks and ${keep.months} months`,
    },
    { term: 'Folder', text: <span className="[overflow-wrap:anywhere]">{folder}</span> },
  ];
  return (
    <section aria-labelledby="backups" className="mt-10">
      <h2 id="backups">Backups</h2>
      {nightly?.standing === 'missed' ? (
        <Notice kind="stop" heading="The last night has no backup">
          <p>
            It is tried again every hour. If it stays so, look whether the folder can be written and has room,
            and at the log for backup-failed. Make one by hand meanwhile.
          </p>
        </Notice>
      ) : null}
      <LackingBackup backups={backups} />
      <Facts items={facts} />
      {backups.isBesideData ? (
        <Notice kind="warn" heading="In the same folder as what they save">
          <p>
            What takes the data folder takes its backups too. Set BACKUP_DIR to another disk, or copy the
            files away.
          </p>
        </Notice>
      ) : null}
      <p className="max-w-[42rem]">
        One file holds all: every row, every photo and every paper, each with its hash. Data that was removed
        from here stays in older backups until they go.
      </p>
      <h3>Commands on the machine</h3>
      <Facts
        items={[
          { term: 'Make one, while the workshop runs', text: <code>npm run backup</code> },
          { term: 'See whether a file is whole', text: <code>npm run restore -- FILE --check</code> },
          { term: 'Bring it back, into an empty place', text: <code>npm run restore -- FILE</code> },
        ]}
      />
    </section>
  );
}
