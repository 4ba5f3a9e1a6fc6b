import type { Metadata } from 'next';
import { redirect } from 'next/navigation';
import { LinkButton } from '@/app/ui/page/button';
import { PageHead } from '@/app/ui/page/page-head';
import { now } from '@/lib/clock';
import { readShownBackupCodes } from '@/lib/people/backup-codes';
import { requireStaff } from '../../../who';

export const metadata: Metadata = { title: 'Your backup codes' };

export default async function BackupCodesPage() {
  const me = await requireStaff();
  const codes = await readShownBackupCodes(me.id, now());
  if (!codes) redirect('/workshop/account');
  return (
    <>
      <PageHead
        title="Your backup codes"
        lead="The second step is on. Each of these codes signs you in once, for the day when your phone is not at hand."
        next="print this page or copy the codes. After ten minutes they are not shown again."
      />
      <ul aria-label="Backup codes" className="grid gap-2">
        {codes.map((code) => (
          <li key={code} className="number-text">
            {code}
          </li>
        ))}
      </ul>
      <p className="page-actions mt-8">
        <LinkButton href="/workshop/account">I have kept them</LinkButton>
      </p>
    </>
  );
}
