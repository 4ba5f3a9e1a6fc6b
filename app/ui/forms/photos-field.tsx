'use client';
import { type ReactNode, useRef, useState } from 'react';
import { MEGABYTE, PHOTO_MEGABYTES, PHOTO_TYPE_WORDS, PHOTO_TYPES } from '@/lib/files/rules/limits';
import { FieldFrame, GroupFrame } from './field-frame';
import { useField } from './form-context';
import type { FormState } from './form-state';
import { sendPhoto } from './send-photo';

type PhotosFieldProps = {
  label: string;
  hint?: ReactNode;
  most: number;
  optional?: boolean | undefined;
};

type Sending = { name: string; share: number; problem: string | null };
type Going = { answer: FormState | null; slips: readonly string[]; sending: readonly Sending[] };

const NOTHING: Going = { answer: null, slips: [], sending: [] };

/** The name a photo had, from the slip it was given when it arrived: facts, hash, name. */
function nameOf(slip: string): string {
  return decodeURIComponent(slip.split('.').slice(2).join('.'));
}

/**
 * Photos of a form that is sent again when something else in it was wrong. What has arrived is listed with a tick and is
 * not sent twice; to leave one out, untick it. With script each photo goes ahead of the form, one after the other, and
 * shows how far it is; without, they go with the form. Fields: `photos` (files) and `kept` (slips of those arrived).
 *
 * ```tsx
 * <PhotosField label="Photos" most={8} optional />
 * ```
 */
export function PhotosField({ label, hint, most, optional }: PhotosFieldProps) {
  const facts = useField('photos', true);
  const answered = useField('kept', false).typed ?? [];
  const [going, setGoing] = useState<Going>(NOTHING);
  const choices = useRef(0);
  // Every answer of the action empties the field and lists what is here, so what went ahead counts until the next one.
  const ahead = going.answer === facts.answer ? going : NOTHING;
  const before = Array.isArray(answered) ? answered : [answered];
  const kept = [...new Set([...before, ...ahead.slips])].filter((slip) => slip !== '');

  async function sendAll(input: HTMLInputElement): Promise<void> {
    const { answer } = facts;
    choices.current += 1;
    const choice = choices.current;
    // Another choice while this one is still on its way takes over the field and what is shown of it.
    const isShown = () => choice === choices.current;
    const files = [...(input.files ?? [])];
    const change = (what: (now: Going) => Partial<Going>) =>
      setGoing((now) => (now.answer === answer ? { ...now, ...what(now) } : now));
    const show = (at: number, news: Partial<Sending>) =>
      isShown() &&
      change(({ sending }) => ({
        sending: sending.map((each, index) => (index === at ? { ...each, ...news } : each)),
      }));
    setGoing({
      answer,
      slips: ahead.slips,
      sending: files.map(({ name }) => ({ name, share: 0, problem: null })),
    });
    let isWhole = true;
    for (const [at, file] of files.entries()) {
      const sent =
        at >= most
          ? { problem: `${most} are the most we can take. Choose again without this one.` }
          : file.size > PHOTO_MEGABYTES * MEGABYTE
            ? { problem: `It is larger than ${PHOTO_MEGABYTES} MB.` }
            : await sendPhoto(file, (share) => show(at, { share }));
      if (sent.problem === undefined) {
        const slip = sent.kept;
        change(({ slips }) => ({ slips: [...slips, slip] }));
        show(at, { share: 1 });
      } else {
        isWhole = false;
        show(at, { problem: sent.problem });
      }
    }
    // The files stay in their field until all have arrived: a form sent before that brings them along.
    if (!isWhole || !isShown()) return;
    input.value = '';
    change(() => ({ sending: [] }));
  }

  return (
    <>
      <FieldFrame
        facts={facts}
        label={label}
        optional={optional}
        hint={
          <>
            {hint ? <span className="block">{hint}</span> : null}
            {`Up to ${most} photos, ${PHOTO_TYPE_WORDS}, ${PHOTO_MEGABYTES} MB at most each. Where they were taken is removed.`}
          </>
        }
      >
        <input
          id={facts.id}
          name="photos"
          type="file"
          className="field-file"
          accept={PHOTO_TYPES.join()}
          multiple
          aria-invalid={facts.problem ? true : undefined}
          aria-describedby={facts.describedBy}
          onChange={(event) => void sendAll(event.currentTarget)}
        />
        <Progress sending={ahead.sending} />
      </FieldFrame>
      <Kept slips={kept} />
    </>
  );
}

function Progress({ sending }: { sending: readonly Sending[] }) {
  const arrived = sending.filter(({ share }) => share === 1).length;
  return (
    <>
      <p className="field-chosen" aria-live="polite">
        {sending.length === 0 ? '' : `${arrived} of ${sending.length} photos have arrived.`}
      </p>
      {sending.length === 0 ? null : (
        <ul className="field-sending">
          {sending.map(({ name, share, problem }, at) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: two photos may have one name, and their order is fixed
            <li key={at}>
              <span>{name}</span>
              {problem ? (
                <strong>{problem}</strong>
              ) : (
                <progress aria-label={`${name}, sent`} value={share} max={1} />
              )}
            </li>
          ))}
        </ul>
      )}
    </>
  );
}

function Kept({ slips }: { slips: readonly string[] }) {
  const facts = useField('kept', true);
  if (slips.length === 0) return null;
  return (
    <GroupFrame
      facts={facts}
      label="Photos that are here already"
      hint="You need not choose them again. Untick one to leave it out."
    >
      <div className="choices">
        {slips.map((slip, at) => {
          const id = at === 0 ? facts.id : `${facts.id}-${at}`;
          return (
            <div className="choice" key={slip}>
              <input id={id} type="checkbox" name="kept" value={slip} className="choice-box" defaultChecked />
              <label className="choice-label" htmlFor={id}>
                {nameOf(slip) || `Photo ${at + 1}`}
              </label>
            </div>
          );
        })}
      </div>
    </GroupFrame>
  );
}
