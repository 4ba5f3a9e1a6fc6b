'use client';
import { useCallback, useEffect, useRef, useState } from 'react';
import { isEndNear, nextLook } from '@/lib/people/rules/session-end';
import { Notice } from '../page/notice';

const ADDRESS = '/workshop/session';
type End = { secondsLeft: number; isLast: boolean; at: string };
type Shown =
  | { is: 'far' }
  | { is: 'near'; at: string; isLast: boolean }
  | { is: 'kept'; at: string }
  | { is: 'over' };

/**
 * Says ten minutes before a session ends that it will, with a button that puts it off, and afterwards how to go on with what is
 * typed (WCAG 2.2, 2.2.1). Nothing is asked until the end could be near. Without script nothing is shown.
 */
export function SessionWatch({ secondsLeft }: { secondsLeft: number }) {
  const [shown, setShown] = useState<Shown>({ is: 'far' });
  const timer = useRef<ReturnType<typeof setTimeout>>(undefined);
  const lookAt = useRef(Number.POSITIVE_INFINITY);
  const line = useRef<HTMLParagraphElement>(null);
  const before = useRef<EventTarget | null>(null);

  const look = useCallback(async (isStaying: boolean) => {
    const again = (seconds: number) => {
      clearTimeout(timer.current);
      lookAt.current = Date.now() + seconds * 1000;
      timer.current = setTimeout(() => look(false), seconds * 1000);
    };
    const end = await askHowLong(isStaying);
    if (end === 'unknown') return again(60);
    if (end === 'over') {
      // Looked at again when the person comes back from the tab where they signed in.
      lookAt.current = 0;
      return setShown({ is: 'over' });
    }
    // What the button did is said for a minute.
    again(isStaying ? 60 : nextLook(end.secondsLeft));
    if (isStaying) setShown({ is: 'kept', at: end.at });
    else
      setShown(isEndNear(end.secondsLeft) ? { is: 'near', at: end.at, isLast: end.isLast } : { is: 'far' });
  }, []);

  useEffect(() => {
    const first = nextLook(secondsLeft) * 1000;
    lookAt.current = Date.now() + first;
    timer.current = setTimeout(() => look(false), first);
    // A machine that slept has missed its timer.
    const back = () => {
      if (document.visibilityState === 'visible' && Date.now() >= lookAt.current) look(false);
    };
    document.addEventListener('visibilitychange', back);
    return () => {
      clearTimeout(timer.current);
      document.removeEventListener('visibilitychange', back);
    };
  }, [secondsLeft, look]);

  // The button is gone once it was pressed: the focus goes back to where it came from.
  useEffect(() => {
    if (shown.is !== 'kept') return;
    if (before.current instanceof HTMLElement && before.current.isConnected) before.current.focus();
    else line.current?.focus();
  }, [shown]);

  return (
    // No role: a page has one status of its own, the answer to what was done on it.
    <div aria-live="polite" className="session-watch">
      {shown.is === 'near' ? (
        <Notice kind="warn" heading={`You are signed out at ${shown.at}`}>
          {shown.isLast ? (
            <p>
              That is twelve hours after you signed in. What you are typing then is not lost: its button asks
              you to sign in again beside it.
            </p>
          ) : (
            <>
              <p>Nothing was clicked for some hours.</p>
              <p>
                <button
                  type="button"
                  className="button button-second"
                  onFocus={(event) => {
                    before.current = event.relatedTarget;
                  }}
                  onClick={() => look(true)}
                >
                  Stay signed in
                </button>
              </p>
            </>
          )}
        </Notice>
      ) : null}
      {shown.is === 'kept' ? (
        <p ref={line} tabIndex={-1}>
          You stay signed in, until {shown.at} if nothing more is clicked.
        </p>
      ) : null}
      {shown.is === 'over' ? (
        <Notice kind="warn" heading="You were signed out">
          <p>
            What you typed on this page is still here.{' '}
            <a href="/workshop/sign-in" target="_blank" rel="noopener">
              Sign in in another tab
            </a>
            , then come back and go on.
          </p>
        </Notice>
      ) : null}
    </div>
  );
}

/** How long the session lasts; 'over' when it has ended, 'unknown' when nobody answered. */
async function askHowLong(isStaying: boolean): Promise<End | 'over' | 'unknown'> {
  try {
    // Whoever is signed out is led to the sign-in page; this page must stay.
    const answer = await fetch(isStaying ? `${ADDRESS}?stay` : ADDRESS, { redirect: 'manual' });
    if (answer.type === 'opaqueredirect') return 'over';
    return answer.ok ? ((await answer.json()) as End) : 'unknown';
  } catch {
    return 'unknown';
  }
}
