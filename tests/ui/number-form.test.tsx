import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test } from 'vitest';
import { typedIn, whereItLeads } from '@/app/(front)/track/where-it-leads';
import { errorTitle } from '@/app/ui/forms/error-title';
import { NumberForm } from '@/app/ui/page/number-form';

const draw = (problem: string | null, autoFocus = false) =>
  renderToStaticMarkup(
    <NumberForm
      action="/track"
      name="number"
      label="Job number"
      hint="It looks like J-4K7Q-X290."
      value="J-1"
      problem={problem}
      submit="Show the stage"
      autoFocus={autoFocus}
    />,
  );

describe('a form for one number', () => {
  test('has no summary before anything is wrong', () => {
    expect(draw(null)).not.toContain('There is a problem');
  });

  test('opens with a summary that takes the focus and leads to the field, in the words at the field', () => {
    const html = draw('The number is too short.');
    expect(html).toContain('There is a problem');
    expect(html.match(/The number is too short\.</g)).toHaveLength(2);
    expect(html).toMatch(/<div[^>]*tabindex="-1"[^>]*autofocus=""/i);
    const target = html.match(/href="#([^"]+)"/)?.[1];
    expect(html).toMatch(new RegExp(`<input[^>]* id="${target}"`));
  });

  test('keeps the focus in a scanner field, which is read out with its problem', () => {
    const html = draw('No booking fits.', true);
    expect(html.match(/autofocus/gi)).toHaveLength(1);
    expect(html).toMatch(
      /<input[^>]*autofocus=""[^>]*aria-describedby="number-number-hint number-number-problem"/i,
    );
  });
});

describe('what a customer types to find a repair or its certificate', () => {
  test.each([
    [' j-ce9s awrw', '/track/JCE9SAWRW'],
    [`https://post.example.org/c/${'A'.repeat(120)}`, `/c/${'A'.repeat(120)}`],
  ])('%s leads to %s', (typed, href) => {
    expect(whereItLeads(typed)).toEqual({ href, problem: null });
  });

  test('an address without a number is no problem, and neither is one that has it twice', () => {
    expect(whereItLeads(typedIn(undefined))).toEqual({ href: null, problem: null });
    expect(whereItLeads(typedIn(['one', 'two']))).toEqual({ href: null, problem: null });
  });

  test.each(['', '   '])('a form sent with an empty field (“%s”) asks for the number', (typed) => {
    expect(whereItLeads(typedIn(typed))).toEqual({
      href: null,
      problem: 'Type the number from your packing slip, message or certificate.',
    });
  });

  test('a number of the wrong length is told with an example of what is asked for', () => {
    expect(whereItLeads('W-4K7Q', 'W-4K7Q-X29D').problem).toContain('for example W-4K7Q-X29D');
    expect(whereItLeads('J-4K7Q').problem).toContain('for example J-4K7Q-X290');
  });

  test.each(['J-CE9S-AWRX', 'hello'])('%s leads nowhere and says why', (typed) => {
    const { href, problem } = whereItLeads(typed);
    expect(href).toBeNull();
    expect(problem).not.toBe('');
    expect(problem).not.toBeNull();
  });
});

test('the title of a refused form begins with "Error: ", once', () => {
  expect(errorTitle('Where is my repair', true)).toBe('Error: Where is my repair');
  expect(errorTitle('Error: Where is my repair', true)).toBe('Error: Where is my repair');
  expect(errorTitle('Error: Where is my repair', false)).toBe('Where is my repair');
});
