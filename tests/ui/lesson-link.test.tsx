import { renderToStaticMarkup } from 'react-dom/server';
import { expect, it } from 'vitest';
import { LessonLink } from '@/app/ui/docket/lesson-link';

it('a check that a claim taught says which, and leads there', () => {
  const html = renderToStaticMarkup(<LessonLink claim="C4K7QX29D" />);
  expect(html).toContain('href="/workshop/claims/C4K7QX29D"');
  expect(html).toContain('Learned from claim C-4K7Q-X29D');
});
