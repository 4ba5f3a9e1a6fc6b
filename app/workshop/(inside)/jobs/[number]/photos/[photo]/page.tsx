import type { Metadata } from 'next';
import { nothingHere } from '@/app/nothing-here';
import { ActionForm } from '@/app/ui/forms/action-form';
import { Select } from '@/app/ui/forms/select';
import { SubmitButton } from '@/app/ui/forms/submit';
import { TextField } from '@/app/ui/forms/text-field';
import { PageHead } from '@/app/ui/page/page-head';
import { TextLink } from '@/app/ui/page/text-link';
import { MarkBoard } from '@/app/ui/photos/mark-board';
import { Photo } from '@/app/ui/photos/photo';
import { COLUMNS, cellOf, MOST_LETTERS, MOST_MARKS, ROWS, readMarks } from '@/lib/jobs/rules/photo-marks';
import { showNumber } from '@/lib/numbers/job-number';
import { may } from '@/lib/people/rules/roles';
import { takeBackRecorded } from '../../bench-actions';
import { carriedFields } from '../../carried-fields';
import { openSheet } from '../../open-sheet';
import { mayTake, TakeBackFields } from '../../taken-back-part';
import { describe } from './actions';

type Props = { params: Promise<{ number: string; photo: string }> };

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const { number, photo } = await params;
  const { job } = await openSheet(number);
  const at = job.photos.findIndex(({ id }) => id === photo) + 1;
  return { title: `Photo ${at} of ${job.photos.length}, ${showNumber(job.number)}` };
}

const choices = (names: readonly string[]) => names.map((name) => ({ value: name, label: name }));
const LINES = Array.from({ length: MOST_MARKS }, (_, at) => at);

/** One photo large, with its caption and the places pointed at. */
export default async function PhotoPage({ params }: Props) {
  const { number, photo: photoId } = await params;
  const { job, who } = await openSheet(number);
  const photo = job.photos.find((each) => each.id === photoId);
  if (!photo) nothingHere();
  const marks = readMarks(photo.marks);
  const shown = {
    src: `/workshop/photo/${photo.id}`,
    alt: photo.caption || `Photo of this unit, ${photo.purpose}`,
    width: photo.width,
    height: photo.height,
    marks,
  };
  return (
    <>
      <PageHead
        above={
          <TextLink href={`/workshop/jobs/${job.number}#photos`}>{`Job ${showNumber(job.number)}`}</TextLink>
        }
        title="Photo"
        lead={photo.caption || photo.purpose}
      />
      {may(who.role, 'take-in') ? (
        <ActionForm
          action={describe.bind(null, job.number, photo.id)}
          hidden={carriedFields(job.version)}
          label="Describe the photo"
        >
          <MarkBoard {...shown}>
            <TextField
              name="caption"
              label="Caption"
              optional
              maxLength={200}
              hint="The customer reads it under the photo."
              defaultValue={photo.caption}
            />
            <p className="mt-6 mb-2 max-w-text">
              Marks: tap on the photo, or name the column and row. A line without a column is no mark.
            </p>
            {LINES.map((at) => {
              const mark = marks[at];
              const cell = mark && cellOf(mark);
              return (
                <fieldset key={at} className="mark-line">
                  <legend>{`Mark ${at + 1}`}</legend>
                  <input type="hidden" name={`x-${at}`} defaultValue={mark?.x ?? ''} />
                  <input type="hidden" name={`y-${at}`} defaultValue={mark?.y ?? ''} />
                  <Select
                    name={`column-${at}`}
                    label="Column"
                    empty="–"
                    choices={choices(COLUMNS)}
                    defaultValue={cell?.column ?? ''}
                  />
                  <Select
                    name={`row-${at}`}
                    label="Row"
                    empty="–"
                    choices={choices(ROWS)}
                    defaultValue={cell?.row ?? ''}
                  />
                  <TextField
                    name={`text-${at}`}
                    label="What it shows"
                    optional
                    maxLength={MOST_LETTERS}
                    defaultValue={mark?.text ?? ''}
                  />
                </fieldset>
              );
            })}
          </MarkBoard>
          <SubmitButton
            label="Save caption and marks"
            consequence="Drawn over the photo; the photo itself stays as it was taken."
          />
        </ActionForm>
      ) : (
        <Photo {...shown} />
      )}
      {mayTake(job, 'photo', photo.id, who) ? (
        <ActionForm
          action={takeBackRecorded.bind(null, job.number)}
          hidden={{ ...carriedFields(job.version), entry: `photo:${photo.id}` }}
          label="Take the photo back"
          summary="It is here by mistake"
        >
          <TakeBackFields what="The photo is deleted for good, here and on the customer’s page." />
        </ActionForm>
      ) : null}
    </>
  );
}
