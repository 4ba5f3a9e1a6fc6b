import { Notice } from '@/app/ui/page/notice';
import type { BackupsView } from '@/lib/backup/records';

/** Says when the newest backup by night lacks files that rows tell of: their folder or bucket may not have been there. */
export function LackingBackup({ backups }: { backups: BackupsView }) {
  const lacking = backups.backups.find(({ isNightly }) => isNightly)?.lacking ?? 0;
  if (lacking === 0) return null;
  const files = lacking === 1 ? 'One photo or paper' : `${lacking} photos or papers`;
  return (
    <Notice kind="stop" heading="The last backup by night does not hold everything">
      <p>
        {`${files} could not be found, or not as they were kept. A list lies beside the backup, in ${backups.folder}. Look whether the folder of files or the bucket is there and whole.`}
      </p>
    </Notice>
  );
}
