import type { ReactNode } from 'react';

/**
 * A calm page for when there is nothing to show: what happened, and what to do next.
 *
 * ```tsx
 * <LostPage title="Nothing at this address"><p>Look up a number instead.</p></LostPage>
 * ```
 */
export function LostPage({ title, children }: { title: string; children: ReactNode }) {
  return (
    <main className="lost" id="main">
      <div className="lost-stub" aria-hidden="true">
        <span className="docket-eyelet" />
      </div>
      <div className="lost-body prose">
        <h1>{title}</h1>
        {children}
      </div>
    </main>
  );
}
