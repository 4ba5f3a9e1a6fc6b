import { type TextBlock, textBlocks } from '@/lib/workshop/rules/text-blocks';

/**
 * A text that the owner wrote (terms, privacy) as headings, paragraphs and lists. Whatever looks like markup in it is
 * shown as typed.
 *
 * ```tsx
 * <WrittenText text={workshop.termsText} />
 * ```
 */
export function WrittenText({ text, headingLevel = 2 }: { text: string; headingLevel?: 2 | 3 }) {
  return (
    <div className="prose">
      {textBlocks(text).map((block, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: the blocks of one text keep their order
        <Block key={index} block={block} headingLevel={headingLevel} />
      ))}
    </div>
  );
}

function Block({ block, headingLevel }: { block: TextBlock; headingLevel: 2 | 3 }) {
  const Heading = `h${headingLevel}` as const;
  switch (block.kind) {
    case 'heading':
      return <Heading>{block.text}</Heading>;
    case 'list':
      return (
        <ul>
          {block.items.map((item) => (
            <li key={item}>{item}</li>
          ))}
        </ul>
      );
    case 'paragraph':
      return (
        <p>
          {block.lines.map((line, index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: the lines of one paragraph keep their order
            <span key={index} className="block">
              {line}
            </span>
          ))}
        </p>
      );
  }
}
