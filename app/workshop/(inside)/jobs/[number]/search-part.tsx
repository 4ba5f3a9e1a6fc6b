import { ActionForm } from '@/app/ui/forms/action-form';
import { RadioGroup } from '@/app/ui/forms/choices';
import { SubmitButton } from '@/app/ui/forms/submit';
import { TextArea } from '@/app/ui/forms/text-area';
import { Notice } from '@/app/ui/page/notice';
import { dayInZone } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';
import type { JobRecord } from '@/lib/jobs/records';
import { SEARCH_END_WORDS, SEARCH_ENDS } from '@/lib/jobs/rules/parcel-search';
import type { WorkshopCard } from '@/lib/workshop/card';
import { carriedFields } from './carried-fields';
import { sayHowItEnded, seek } from './search-actions';

/** A parcel that a carrier has and that does not come: it is looked for, and then it is said how that ended. */
export function SearchPart({ job, workshop }: { job: JobRecord; workshop: WorkshopCard }) {
  const { soughtSince } = job;
  if (soughtSince === null) return <SeekForm job={job} />;
  const label = 'How the search ended';
  const since = formatDay(dayInZone(soughtSince, workshop.timeZone), workshop.locale, 'weekday');
  return (
    <Notice kind="warn" heading={`Its parcel is looked for since ${since}`}>
      <p>If it comes back to us, say so below instead.</p>
      <ActionForm
        action={sayHowItEnded.bind(null, job.number)}
        hidden={carriedFields(job.version)}
        label={label}
        summary={label}
      >
        <RadioGroup
          name="how"
          label="What became of it"
          choices={SEARCH_ENDS.map((value) => ({ value, label: SEARCH_END_WORDS[value].label }))}
        />
        <TextArea
          name="note"
          label="What becomes of it now, in words for the customer"
          hint="Needed where it is lost: what you pay or do, and when. What comes back of a price goes by credit note, under Money."
          optional
          rows={3}
          maxLength={1000}
        />
        <SubmitButton label="Record how it ended" consequence="Tells the customer, and closes the job." />
      </ActionForm>
    </Notice>
  );
}

function SeekForm({ job }: { job: JobRecord }) {
  const label = 'The parcel has not come: look for it';
  return (
    <ActionForm
      action={seek.bind(null, job.number)}
      hidden={carriedFields(job.version)}
      label={label}
      summary={label}
    >
      <TextArea
        name="note"
        label="What you asked the carrier, in words for the customer"
        hint={`For example: ${job.carrier} searches its depot and answers within ten days.`}
        rows={2}
        maxLength={500}
      />
      <SubmitButton
        label="Look for the parcel"
        consequence="Tells the customer. It is listed on Today until you say how it ended, and nothing closes the job."
        kind="second"
      />
    </ActionForm>
  );
}
