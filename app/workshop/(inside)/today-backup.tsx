import { LinkButton } from '@/app/ui/page/button';
import { Notice } from '@/app/ui/page/notice';
import type { KeptBackup } from '@/lib/backup/records';
import { formatInstant } from '@/lib/calendar/format';
import type { WorkshopCard } from '@/lib/workshop/card';

/** Told to the owner only: nobody else can do anything about it. */
export function MissedBackup(props: { last: KeptBackup | undefined; workshop: WorkshopCard }) {
  const { locale, timeZone: zone } = props.workshop;
  return (
    <div className="mt-6">
      <Notice kind="warn" heading="The last night has no backup">
        <p>
          {props.last
            ? `The newest is of ${formatInstant(props.last.madeAt, { locale, zone })}.`
            : 'There is none at all.'}
        </p>
        <p>
          <LinkButton href="/workshop/settings/keeping#backups" kind="second">
            Look at the backups
          </LinkButton>
        </p>
      </Notice>
    </div>
  );
}
