import { Select } from '@/app/ui/forms/select';
import { Button } from '@/app/ui/page/button';
import { CompareSlider } from '@/app/ui/photos/compare-slider';
import type { JobRecord } from '@/lib/jobs/records';
import type { WorkshopCard } from '@/lib/workshop/card';
import { casePhoto, firstChoice, photoWords } from './case-photos';

type Props = {
  repair: JobRecord;
  returned: JobRecord;
  workshop: WorkshopCard;
  chosen: { before: string | null; after: string | null; repair: string | null };
};

/** One photo of the repair over one of the returned unit; any two can be chosen, without script too. */
export function ComparePhotos({ repair, returned, workshop, chosen }: Props) {
  const before =
    repair.photos.find((photo) => photo.id === chosen.before) ??
    firstChoice(repair.photos, ['proof', 'work', 'finding', 'arrival']);
  const after =
    returned.photos.find((photo) => photo.id === chosen.after) ??
    firstChoice(returned.photos, ['inspection', 'finding', 'arrival', 'claim']);
  if (!before || !after) {
    return (
      <p className="text-soft">
        {before ? 'There is no photo of the returned unit yet.' : 'The repair left no photo to compare with.'}
      </p>
    );
  }
  const choices = (job: JobRecord) =>
    job.photos.map((photo, index) => ({ value: photo.id, label: `${index + 1}. ${photoWords(photo)}` }));
  return (
    <div className="grid items-start gap-x-8 gap-y-4 lg:grid-cols-[minmax(0,42rem)_minmax(0,1fr)]">
      <CompareSlider
        label="The repair and the returned unit"
        before={casePhoto(before, workshop, 'whole')}
        after={casePhoto(after, workshop, 'whole')}
      />
      {repair.photos.length + returned.photos.length > 2 ? (
        <form method="get" action="#compare" className="form" aria-label="Choose two photos">
          {chosen.repair ? <input type="hidden" name="repair" value={chosen.repair} /> : null}
          <Select name="before" label="Of the repair" choices={choices(repair)} defaultValue={before.id} />
          <Select
            name="after"
            label="Of the returned unit"
            choices={choices(returned)}
            defaultValue={after.id}
          />
          <div className="submit">
            <Button type="submit">Compare these two</Button>
          </div>
        </form>
      ) : null}
    </div>
  );
}
