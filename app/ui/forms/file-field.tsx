'use client';
import { type ReactNode, useState } from 'react';
import { MEGABYTE, PHOTO_MEGABYTES, PHOTO_TYPE_WORDS, PHOTO_TYPES } from '@/lib/files/rules/limits';
import { FieldFrame } from './field-frame';
import { useField, useTicked } from './form-context';
import type { FormState } from './form-state';

type FileFieldProps = {
  name: string;
  label: ReactNode;
  hint?: ReactNode;
  optional?: boolean | undefined;
  most: number;
  /** as much as a photo unless said otherwise */
  maxMegabytes?: number | undefined;
  accept?: string | undefined;
  kinds?: string | undefined;
  camera?: boolean | undefined;
};

type ChosenFile = { name: string; bytes: number };

/**
 * Photos (or, with `accept` and `kinds`, other files). Says its limits before anything is chosen; `camera` opens
 * the phone's camera at once, which is right at the bench and wrong for a customer who already took the photo.
 * A browser never refills a file field: after a problem it asks for the same files by name.
 *
 * ```tsx
 * <FileField name="photos" label="Photos of the damage" most={6} optional />
 * <FileField name="photo" label="Photo on arrival" most={1} camera />
 * <FileField name="sheet" label="Price list" most={1} maxMegabytes={2} accept=".csv,text/csv" kinds="CSV" />
 * ```
 */
export function FileField(props: FileFieldProps) {
  const { name, label, hint, most, maxMegabytes = PHOTO_MEGABYTES } = props;
  const { accept = PHOTO_TYPES.join(), kinds = PHOTO_TYPE_WORDS } = props;
  const facts = useField(name, true);
  const before = useTicked(name)?.filter(Boolean) ?? [];
  const [choice, setChoice] = useState<{ answer: FormState; files: readonly ChosenFile[] } | null>(null);
  // Every answer of the action empties the field, so a choice counts only until the next one.
  const chosen = choice?.answer === facts.answer ? choice.files : [];
  const number = most === 1 ? 'One file' : `Up to ${most} files`;
  return (
    <FieldFrame
      facts={facts}
      label={label}
      optional={props.optional}
      hint={
        <>
          {hint ? <span className="block">{hint}</span> : null}
          {`${number}, ${kinds}, ${maxMegabytes} MB at most${most === 1 ? '' : ' each'}.`}
        </>
      }
    >
      {before.length > 0 && chosen.length === 0 ? (
        <p className="field-again">{`Your browser let go of the files. Choose again: ${before.join(', ')}`}</p>
      ) : null}
      <input
        id={facts.id}
        name={name}
        type="file"
        className="field-file"
        accept={accept}
        multiple={most > 1}
        capture={props.camera ? 'environment' : undefined}
        aria-invalid={facts.problem ? true : undefined}
        aria-describedby={facts.describedBy}
        onChange={(event) => {
          const files = [...(event.currentTarget.files ?? [])];
          setChoice({ answer: facts.answer, files: files.map(({ name, size }) => ({ name, bytes: size })) });
        }}
      />
      <p className="field-chosen" aria-live="polite">
        {describeChosen(chosen, most, maxMegabytes)}
      </p>
    </FieldFrame>
  );
}

function describeChosen(chosen: readonly ChosenFile[], most: number, maxMegabytes: number): string {
  if (chosen.length === 0) return '';
  const tooBig = chosen.filter((file) => file.bytes > maxMegabytes * MEGABYTE);
  if (chosen.length > most) {
    return `That is ${chosen.length} files; we can take ${most}. Choose again with fewer.`;
  }
  if (tooBig.length > 0) {
    return `Larger than ${maxMegabytes} MB: ${tooBig.map((file) => file.name).join(', ')}. Choose a smaller one.`;
  }
  const bytes = chosen.reduce((sum, file) => sum + file.bytes, 0);
  const size = Math.max(0.1, bytes / MEGABYTE).toFixed(1);
  return `${chosen.length === 1 ? '1 file' : `${chosen.length} files`} ready to send, ${size} MB.`;
}
