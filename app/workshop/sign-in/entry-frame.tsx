import type { ReactNode } from 'react';
import { TextLink } from '@/app/ui/page/text-link';

/** The card that the pages before the workshop share: whose workshop it is, and one thing to do. */
export function EntryFrame(props: { workshopName: string; title: string; children: ReactNode }) {
  return (
    <main className="lost" id="main">
      <div className="lost-stub" aria-hidden="true">
        <span className="docket-eyelet" />
      </div>
      <div className="lost-body">
        <p className="page-above">
          <TextLink href="/">{props.workshopName}</TextLink>
        </p>
        <h1 className="mb-6">{props.title}</h1>
        {props.children}
      </div>
    </main>
  );
}
