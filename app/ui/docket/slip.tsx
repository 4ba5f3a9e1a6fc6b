import type { Route } from 'next';
import type { ReactNode } from 'react';
import { TextLink } from '../page/text-link';
import { NumberText } from '../words/number-text';

export type SlipProps<T extends string> = {
  href: Route<T>;
  kind: string;
  number: string;
  title: ReactNode;
  tag?: ReactNode;
  facts?: readonly ReactNode[] | undefined;
};

/**
 * A docket in one line, for lists: its number links to the whole. Put slips in a SlipList.
 *
 * ```tsx
 * <SlipList label="Waiting on us">
 *   <Slip href="/workshop/jobs/J4K7QX29D" kind="Job" number="J-4K7Q-X29D" title="Meridian Four, jack loose"
 *     tag={<Tag tone="warn">late by 2 days</Tag>} facts={['promised 9 Dec', 'bench: Ines']} />
 * </SlipList>
 * ```
 */
export function Slip<T extends string>({ href, kind, number, title, tag, facts }: SlipProps<T>) {
  return (
    <li className="slip">
      <p className="slip-stub">
        <span className="docket-kind">{kind}</span>
        <TextLink href={href}>
          <NumberText text={number} />
        </TextLink>
      </p>
      <div className="slip-body">
        <p className="slip-title">{title}</p>
        {facts && facts.length > 0 ? (
          <ul className="slip-facts">
            {facts.map((fact, index) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: the facts of one slip keep their order
              <li key={index}>{fact}</li>
            ))}
          </ul>
        ) : null}
      </div>
      {tag ? <p className="slip-tag">{tag}</p> : null}
    </li>
  );
}

export function SlipList({ label, children }: { label: string; children: ReactNode }) {
  return (
    <ul className="slips" aria-label={label}>
      {children}
    </ul>
  );
}
