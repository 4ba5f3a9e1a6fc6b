import { type TextBlock, textBlocks } from '@/lib/workshop/rules/text-blocks';
import { Para } from './frame';
import type { Setting } from './letter';

/** The terms as they were agreed to, word for word: the confirmation on a durable medium holds them (Directive 2011/83/EU Art. 8(7)). */
export function AgreedTerms({ setting }: { setting: Setting }) {
  const { terms, workshop } = setting;
  if (!terms) return null;
  return (
    <>
      <Para>
        <strong>{`Terms of ${workshop.name}, as you agreed to them`}</strong>
      </Para>
      {textBlocks(terms).flatMap((block, place) =>
        // Each line by itself, so that the plain text keeps them apart too.
        linesOf(block).map((line, at) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: the lines of one text keep their order
          <Para key={`${place}-${at}`}>{block.kind === 'heading' ? <strong>{line}</strong> : line}</Para>
        )),
      )}
    </>
  );
}

function linesOf(block: TextBlock): string[] {
  switch (block.kind) {
    case 'heading':
      return [block.text];
    case 'list':
      return block.items.map((item) => `• ${item}`);
    case 'paragraph':
      return block.lines;
  }
}
