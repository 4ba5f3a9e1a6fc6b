'use client';
import { useEffect, useState } from 'react';

type Props = {
  job: string;
  /** The job's version: a form that was sent is forgotten once the job has moved on by it. */
  version: number;
  /** Whether the page is shown as the answer to a form that was saved. */
  isSaved: boolean;
};

const OPEN = 'textarea[name]';

/**
 * Keeps what is typed into the job sheet's text areas in this tab until it is saved, so that a reload or a dead battery loses
 * nothing. Without script the browser's own habits have to do.
 */
export function KeepTyped({ job, version, isSaved }: Props) {
  const [count, setCount] = useState(0);
  useEffect(() => {
    const sent = read(`sent:${job}`);
    if (sent && isSaved && version > Number(sent.slice(0, sent.indexOf(':')))) {
      forget(job, sent.slice(sent.indexOf(':') + 1));
      sessionStorage.removeItem(`sent:${job}`);
    }
    let restored = 0;
    for (const area of document.querySelectorAll<HTMLTextAreaElement>(OPEN)) {
      const kept = read(keyOf(job, area));
      if (kept === null || kept === '' || area.value !== '') continue;
      area.value = kept;
      for (let fold = area.closest('details'); fold; fold = fold.parentElement?.closest('details') ?? null)
        fold.open = true;
      restored += 1;
    }
    setCount(restored);
  }, [job, version, isSaved]);
  useEffect(() => {
    const typed = (event: Event) => {
      if (event.target instanceof HTMLTextAreaElement && event.target.matches(OPEN))
        write(keyOf(job, event.target), event.target.value);
    };
    const sent = (event: Event) => {
      if (event.target instanceof HTMLFormElement)
        write(`sent:${job}`, `${version}:${labelOf(event.target)}`);
    };
    document.addEventListener('input', typed);
    document.addEventListener('submit', sent);
    return () => {
      document.removeEventListener('input', typed);
      document.removeEventListener('submit', sent);
    };
  }, [job, version]);
  if (count === 0) return null;
  return (
    <p role="status" className="text-small text-soft">
      {count === 1
        ? 'What you had typed and not saved is back in its field.'
        : `What you had typed and not saved is back in ${count} fields.`}
    </p>
  );
}

const labelOf = (form: HTMLFormElement | null) => form?.getAttribute('aria-label') ?? '';
const keyOf = (job: string, area: HTMLTextAreaElement) => `typed:${job}:${labelOf(area.form)}:${area.name}`;

function forget(job: string, label: string): void {
  for (const key of Object.keys(sessionStorage))
    if (key.startsWith(`typed:${job}:${label}:`)) sessionStorage.removeItem(key);
}

// A browser that keeps nothing for this page throws on every access; then nothing is kept.
function read(key: string): string | null {
  try {
    return sessionStorage.getItem(key);
  } catch {
    return null;
  }
}

function write(key: string, value: string): void {
  try {
    sessionStorage.setItem(key, value);
  } catch {
    return;
  }
}
