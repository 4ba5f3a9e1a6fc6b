import type { ReactNode } from 'react';

type PageHeadProps = {
  title: ReactNode;
  lead?: ReactNode;
  next?: ReactNode;
  above?: ReactNode;
  children?: ReactNode;
};

/**
 * The head of every page: its h1, one sentence of lead, and a line that says what happens next, when and at what cost.
 * `above` is a small line over the title (a way back, a step count); children are actions of the page.
 *
 * ```tsx
 * <PageHead title="Your recorder is on the bench" lead="We opened it on Tuesday 1 December."
 *   next="By Thursday 3 December you get a price. Until then it costs nothing." />
 * ```
 */
export function PageHead({ title, lead, next, above, children }: PageHeadProps) {
  return (
    <header className="page-head">
      {above ? <div className="page-above">{above}</div> : null}
      <h1>{title}</h1>
      {lead ? <p className="page-lead">{lead}</p> : null}
      {next ? (
        <p className="page-next">
          <strong>Next:</strong> {next}
        </p>
      ) : null}
      {children ? <div className="page-actions">{children}</div> : null}
    </header>
  );
}
