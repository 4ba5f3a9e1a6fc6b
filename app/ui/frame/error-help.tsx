'use client';
import { useEffect, useState } from 'react';
import { Button, LinkButton } from '../page/button';
import { NumberText } from '../words/number-text';

/** What to do after a fault of ours, and the references under which the log keeps its cause. */
export function ErrorHelp({ error, retry }: { error: unknown; retry: () => void }) {
  const [request, setRequest] = useState<string>();
  // The document's own element carries it (app/layout.tsx); it stands there only once this page does.
  useEffect(() => setRequest(document.documentElement.dataset['request']), []);
  const reference = [referenceOf(error), request].filter((part) => part !== undefined);
  return (
    <>
      <p>The fault is on our side. Wait a minute, then try again. What you had already sent is kept.</p>
      <p>
        If you were sending a form, look first whether it arrived: you would have a message from us. If not,
        go back and send it once more.
      </p>
      {reference.length > 0 ? (
        <p>
          When you write to us about it, give this reference: <NumberText text={reference.join(' · ')} />
        </p>
      ) : null}
      <div className="page-actions">
        <Button kind="main" onClick={() => retry()}>
          Try again
        </Button>
        <LinkButton href="/" kind="quiet">
          Go to the front page
        </LinkButton>
      </div>
    </>
  );
}

function referenceOf(error: unknown): string | undefined {
  if (!(error instanceof Error) || !('digest' in error)) return undefined;
  return typeof error.digest === 'string' ? error.digest : undefined;
}
