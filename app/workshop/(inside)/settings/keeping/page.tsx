import type { Metadata } from 'next';
import { readWorkshop } from '@/app/read-workshop';
import { CountField } from '@/app/ui/forms/count-field';
import { TextArea } from '@/app/ui/forms/text-area';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { TextLink } from '@/app/ui/page/text-link';
import { viewBackups } from '@/lib/backup/records';
import { now } from '@/lib/clock';
import { UNCLAIMED_LAW } from '@/lib/jobs/rules/unclaimed';
import { REQUEST_MONTHS, WHAT_STAYS } from '@/lib/keeping/rules/retention';
import { requireStaff } from '../../../who';
import { saveKeeping } from '../actions';
import { SettingsForm } from '../settings-form';
import { BackupsPart } from './backups-part';

export const metadata: Metadata = { title: 'Keeping' };

export default async function KeepingPage() {
  await requireStaff('settings');
  const [workshop, backups] = await Promise.all([readWorkshop(), viewBackups(now())]);
  return (
    <>
      <PageHead
        above={<TextLink href="/workshop/settings">Settings</TextLink>}
        title="Keeping"
        lead="Parcels that do not come, units that nobody fetches, how long you keep what you know of people, and backups of everything."
      />
      <SettingsForm
        action={saveKeeping}
        workshop={workshop}
        label="Keeping"
        save="Save keeping"
        consequence="Counts from the next hour on; what has left or was removed stays so."
      >
        <h2>Parcels that do not come</h2>
        <p className="max-w-[42rem]">
          Counted from the booking, or from the day the customer gave the number of their parcel. Nothing is
          cancelled by itself.
        </p>
        <CountField
          name="parcelRemindDays"
          label="Remind the customer after"
          hint="One message, with the day until which you keep it open. 0 sends none."
          unit="days"
          defaultValue={workshop.parcelRemindDays}
        />
        <CountField
          name="parcelOverDays"
          label="Counts as not coming after"
          hint="Today and Arrivals then list it apart, and no parts are ordered for it. A reminder always leaves 14 days."
          unit="days"
          defaultValue={workshop.parcelOverDays}
        />
        <h2>Units nobody fetches</h2>
        <p className="max-w-[42rem]">{UNCLAIMED_LAW}</p>
        <CountField
          name="unclaimedNotices"
          label="Notices"
          hint="How many letters say that a unit waits, before you decide. 0 sends none automatically."
          defaultValue={workshop.unclaimedNotices}
        />
        <CountField
          name="unclaimedAfterDays"
          label="The first after"
          hint="Counted from the day the customer was told that the unit is ready."
          unit="days"
          defaultValue={workshop.unclaimedAfterDays}
        />
        <CountField
          name="unclaimedEveryDays"
          label="Then every"
          hint="Also the time a customer has to answer each of them."
          unit="days"
          defaultValue={workshop.unclaimedEveryDays}
        />
        <TextArea
          name="storageText"
          label="What every notice says about keeping the unit"
          hint="Where it is kept, and what that costs, if your terms say so."
          optional
          rows={3}
          maxLength={1000}
          defaultValue={workshop.storageText}
        />
        <h2>People’s data</h2>
        <p className="max-w-[42rem]">
          {`Names, addresses, messages and photos are removed by themselves so long after the last job with them was closed. Requests for a price that came to nothing are removed after ${REQUEST_MONTHS} months; one whose price was accepted stays until it is booked or you turn it down.`}
        </p>
        <CountField
          name="keepMonths"
          label="Kept after a job is closed"
          hint="0: until you remove them. Papers for the tax office are often kept for six to ten years; ask which hold for you."
          unit="months"
          defaultValue={workshop.keepMonths}
        />
        <Notice kind="note" heading="What stays">
          <ul>
            {WHAT_STAYS.map((each) => (
              <li key={each.what}>{`${each.what}: ${each.why}`}</li>
            ))}
          </ul>
        </Notice>
      </SettingsForm>
      <BackupsPart backups={backups} workshop={workshop} />
    </>
  );
}
