import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test } from 'vitest';
import { QuoteStateTag } from '@/app/ui/words/quote-state-tag';
import { StageTag } from '@/app/ui/words/stage-tag';
import { STAGE_WORDS, STAGES } from '@/lib/jobs/rules/stages';

const tone = (html: string) => html.match(/class="tag tag-(\w+)"/)?.[1];

describe('the tag of a stage', () => {
  test.each(STAGES)('%s is told by its word and a shape', (stage) => {
    const html = renderToStaticMarkup(<StageTag stage={stage} />);
    expect(html).toContain(STAGE_WORDS[stage].label);
    expect(html).toContain('<svg');
  });

  test('has the shape of a job that runs, waits, is done or was stopped', () => {
    const of = (stage: (typeof STAGES)[number]) => tone(renderToStaticMarkup(<StageTag stage={stage} />));
    expect([of('on-bench'), of('booked'), of('closed'), of('cancelled')]).toEqual([
      'now',
      'waiting',
      'good',
      'stop',
    ]);
  });
});

test('a quote whose booking was cancelled is stopped, whatever was agreed before', () => {
  const html = renderToStaticMarkup(<QuoteStateTag state="booked" isCancelled />);
  expect(html).toContain('Cancelled');
  expect(tone(html)).toBe('stop');
  expect(tone(renderToStaticMarkup(<QuoteStateTag state="booked" />))).toBe('good');
});
