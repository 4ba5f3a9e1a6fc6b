import { Fragment } from 'react';

/**
 * A number or serial in the face whose 0/O, 1/I/l, 5/S differ; it may break after a hyphen, never within a group.
 *
 * ```tsx
 * <NumberText text="J-4K7Q-X29D" />
 * ```
 */
export function NumberText({ text, large }: { text: string; large?: boolean }) {
  const groups = text.split('-');
  return (
    <span className={large ? 'number-text number-large' : 'number-text'} translate="no">
      {groups.map((group, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: groups of a fixed number never move
        <Fragment key={index}>
          {index > 0 ? (
            <>
              -<wbr />
            </>
          ) : null}
          {group}
        </Fragment>
      ))}
    </span>
  );
}
