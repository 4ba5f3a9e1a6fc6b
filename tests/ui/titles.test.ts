import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { generateMetadata } from '@/app/(front)/book/[draft]/[step]/page';
import { numberedTitle } from '@/app/workshop/(inside)/numbered-title';

const inside = 'app/workshop/(inside)';
const ofOneThing = readdirSync(inside, { recursive: true, encoding: 'utf8' }).filter(
  (file) => path.basename(file) === 'page.tsx' && file.includes('['),
);

// WCAG 2.2, 2.4.2: two tabs of the bench that show two jobs must not have one title.
describe('pages of the workshop about one thing', () => {
  test('are found', () => expect(ofOneThing.length).toBeGreaterThan(20));

  test.each(ofOneThing)('%s makes its title from what it shows', (file) => {
    const source = readFileSync(path.join(inside, file), 'utf8');
    expect(source).toContain('generateMetadata');
    expect(source).not.toMatch(/export const metadata\b/);
  });

  test.each(ofOneThing)('%s asks who is there before its title reads anything', (file) => {
    const source = readFileSync(path.join(inside, file), 'utf8');
    const [body = ''] = /export async function generateMetadata[\s\S]*?\n}\n/.exec(source) ?? [];
    const [first] = [...body.matchAll(/\bawait (?!params|searchParams)(\w+)/g)].map(([, called]) => called);
    expect(first ?? 'requireStaff').toMatch(/^(requireStaff|open[A-Z]\w*)$/);
  });

  test.each(['JCE9SAWRW', 'J-CE9S-AWRW', 'jce9s awrw'])(
    'have the number as it is printed: %s',
    async (number) => {
      const params = Promise.resolve({ number });
      expect(await numberedTitle('Check sheet')({ params })).toEqual({ title: 'Check sheet, J-CE9S-AWRW' });
    },
  );
});

test.each([
  ['problem', 'Step 2 of 5: What is wrong – Book a repair'],
  ['confirm', 'Step 5 of 5: Check and book – Book a repair'],
  ['nonsense', 'Book a repair'],
])('the step "%s" of a booking has a title of its own', async (step, title) => {
  const params = Promise.resolve({ draft: 'none', step });
  expect(await generateMetadata({ params })).toEqual({ title, robots: { index: false } });
});
