import fc from 'fast-check';
import { expect, test } from 'vitest';
import { textBlocks } from '@/lib/workshop/rules/text-blocks';

test('headings, paragraphs with their line breaks and lists are told apart', () => {
  const text =
    '# Payment\nWithin 14 days.\nBy card.\n\nOr:\n- card\n* transfer\n\n\n## Law\nNothing here takes it away.';
  expect(textBlocks(text)).toEqual([
    { kind: 'heading', text: 'Payment' },
    { kind: 'paragraph', lines: ['Within 14 days.', 'By card.'] },
    { kind: 'paragraph', lines: ['Or:'] },
    { kind: 'list', items: ['card', 'transfer'] },
    { kind: 'heading', text: 'Law' },
    { kind: 'paragraph', lines: ['Nothing here takes it away.'] },
  ]);
});

test('an empty line ends a list', () => {
  expect(textBlocks('- one\n\n- two')).toEqual([
    { kind: 'list', items: ['one'] },
    { kind: 'list', items: ['two'] },
  ]);
});

test('tags stay text', () => {
  const line = '<script>alert(1)</script> & <b>bold</b>';
  expect(textBlocks(line)).toEqual([{ kind: 'paragraph', lines: [line] }]);
});

test('line ends of every system count', () => {
  expect(textBlocks('a\r\nb\rc')).toEqual([{ kind: 'paragraph', lines: ['a', 'b', 'c'] }]);
});

test.each(['', '  \n\t\n', '#', '###\n\n'])('"%s" holds nothing', (text) => {
  expect(textBlocks(text)).toEqual([]);
});

test('no word that was written is lost', () => {
  const word = fc.stringMatching(/^[a-z<>&"']{1,8}$/);
  const mark = fc.constantFrom('', '# ', '- ');
  const line = fc.tuple(mark, word).map(([before, text]) => before + text);
  fc.assert(
    fc.property(fc.array(fc.oneof(line, fc.constant(''))), (lines) => {
      const shown = textBlocks(lines.join('\n')).flatMap((block) => {
        if (block.kind === 'heading') return [block.text];
        return block.kind === 'list' ? block.items : block.lines;
      });
      expect(shown).toEqual(lines.filter(Boolean).map((entry) => entry.replace(/^(# |- )/, '')));
    }),
  );
});
