import type { Metadata } from 'next';
import { readWorkshop } from '@/app/read-workshop';
import { RadioGroup } from '@/app/ui/forms/choices';
import { CountField } from '@/app/ui/forms/count-field';
import { Select } from '@/app/ui/forms/select';
import { TextField } from '@/app/ui/forms/text-field';
import { PageHead } from '@/app/ui/page/page-head';
import { TextLink } from '@/app/ui/page/text-link';
import { dayInZone } from '@/lib/calendar/day';
import { now } from '@/lib/clock';
import { AIMS } from '@/lib/promise/rules/aim';
import { holidayChoices, holidayPlace, zoneNames } from '@/lib/workshop/places';
import { readCalendar, readClosingDays } from '@/lib/workshop/records';
import { requireStaff } from '../../../who';
import { saveDays } from '../actions';
import { SettingsForm } from '../settings-form';
import { ClosingDays } from './closing-days';

export const metadata: Metadata = { title: 'Days and paper' };

export default async function DaysPage() {
  await requireStaff('settings');
  const workshop = await readWorkshop();
  const today = dayInZone(now(), workshop.timeZone);
  const [closingDays, calendar] = await Promise.all([readClosingDays(), readCalendar(workshop, today)]);
  return (
    <>
      <PageHead above={<TextLink href="/workshop/settings">Settings</TextLink>} title="Days and paper" />
      <SettingsForm
        action={saveDays}
        workshop={workshop}
        label="Days and paper"
        save="Save days and paper"
        consequence="Ends of cover and last days to claim that are already on a certificate do not move."
      >
        <TextField
          name="timeZone"
          label="Time zone"
          hint="Every day of the workshop, and every end of cover, is counted in it."
          width="half"
          list={zoneNames()}
          defaultValue={workshop.timeZone}
          autoComplete="off"
        />
        <Select
          name="holidays"
          label="Public holidays"
          hint="Promises and last days to claim move past them."
          choices={holidayChoices()}
          defaultValue={holidayPlace(workshop)}
        />
        <CountField
          name="capacityMinutesDay"
          label="Bench work on a working day"
          hint="All hands together. Promised dates are worked out with it."
          unit="minutes"
          defaultValue={workshop.capacityMinutesDay}
        />
        <Select
          name="promiseAim"
          label="Units ready by their promised day"
          hint="A higher share is kept more often and promises later days. Customers read the share beside the day."
          choices={AIMS.map((aim) => ({ value: String(aim), label: `${aim} of 100` }))}
          defaultValue={String(workshop.promiseAim)}
        />
        <p>
          <TextLink href="/workshop/promise#backtest">What each share would have come to</TextLink>
        </p>
        <CountField
          name="answerDays"
          label="You answer within"
          hint="Told to everybody who asks for a price, writes to you or sends in a claim. Today marks whatever has waited longer."
          unit="working days"
          defaultValue={workshop.answerDays}
        />
        <TextField
          name="locale"
          label="Amounts and dates are written as in"
          hint="A language tag, like en-GB, en-IE or de-DE. Of a language that is not English only amounts follow it: all text is English, days too."
          width="short"
          defaultValue={workshop.locale}
          autoComplete="off"
        />
        <RadioGroup
          name="paper"
          label="Paper"
          defaultValue={workshop.paper}
          choices={[
            { value: 'A4', label: 'A4' },
            { value: 'LETTER', label: 'US Letter' },
          ]}
        />
      </SettingsForm>
      <ClosingDays closingDays={closingDays} calendar={calendar} today={today} locale={workshop.locale} />
    </>
  );
}
