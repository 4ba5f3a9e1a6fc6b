import { readFileSync } from 'node:fs';
import type { ReactNode } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test } from 'vitest';
import { ActionForm } from '@/app/ui/forms/action-form';
import { AddressFields } from '@/app/ui/forms/address-fields';
import { Checkbox, CheckboxGroup, RadioGroup } from '@/app/ui/forms/choices';
import { FileField } from '@/app/ui/forms/file-field';
import type { FormState } from '@/app/ui/forms/form-state';
import { Select } from '@/app/ui/forms/select';
import { SubmitBar } from '@/app/ui/forms/submit';
import { TextArea } from '@/app/ui/forms/text-area';
import { TextField } from '@/app/ui/forms/text-field';

async function keep(before: FormState): Promise<FormState> {
  return before;
}

function draw(answer: FormState, fields: ReactNode = null): string {
  return renderToStaticMarkup(
    <ActionForm action={keep} initial={answer} hidden={{ model: 'meridian-4' }}>
      {fields}
    </ActionForm>,
  );
}

const CHOICES = [
  { value: 'supply', label: 'Power supply' },
  { value: 'case', label: 'Case' },
];

const every = (
  <>
    <TextField name="serial" label="Serial number" hint="On the plate underneath." />
    <TextArea name="symptoms" label="What does it do?" />
    <Select
      name="carrier"
      label="Carrier"
      choices={[{ value: 'van', label: 'Harbour Van' }]}
      empty="Choose"
    />
    <RadioGroup name="battery" label="Battery?" choices={[{ value: 'no', label: 'No' }]} />
    <CheckboxGroup name="accessories" label="Sent along" choices={CHOICES} />
    <FileField name="photos" label="Photos" most={6} maxMegabytes={10} />
    <Checkbox name="terms" label="I agree" />
  </>
);
const NAMES = ['serial', 'symptoms', 'carrier', 'battery', 'accessories', 'photos', 'terms'];

// The rule that takes the notes of other forms away beside a problem is for what stands in the address alone.
test('an answer of a form stays when another form of the page is refused', () => {
  const css = readFileSync(new URL('../../app/ui/forms/forms.css', import.meta.url), 'utf8');
  const hiding = [...css.matchAll(/([^{}]*)\{\s*display: none;\s*\}/g)].map(([, selector = '']) =>
    selector.trim(),
  );
  const ofNotes = hiding.filter((selector) => selector.includes('.notice'));
  expect(ofNotes).toHaveLength(1);
  expect(ofNotes[0]).toMatch(/:not\(\.form-answer \*\)$/);
  expect(draw({ done: 'Made.', copied: 'quay-alder-482' })).toMatch(
    /<div [^>]*class="form-answer"><div class="notice notice-good" role="status">.*quay-alder-482/,
  );
});

describe('a form with problems', () => {
  const errors = Object.fromEntries(NAMES.map((name) => [name, [`Problem of ${name}`]]));
  const html = draw({ errors, values: {} }, every);
  const ids = new Set([...html.matchAll(/ id="([^"]+)"/g)].map(([, id]) => id));

  test('opens with a summary under one heading, in the words used at the fields', () => {
    expect(html.match(/There is a problem/g)).toHaveLength(1);
    for (const name of NAMES) expect(html.match(new RegExp(`Problem of ${name}<`, 'g'))).toHaveLength(2);
  });

  test('links each line of the summary to an input that exists', () => {
    const targets = [...html.matchAll(/href="#([^"]+)"/g)].map(([, id]) => id);
    expect(targets).toHaveLength(NAMES.length);
    for (const [at, id] of targets.entries()) {
      const control = html.match(new RegExp(`<(?:input|textarea|select)[^>]*id="${id}"[^>]*>`))?.[0];
      expect(control).toContain(`name="${NAMES[at]}"`);
    }
  });

  test('describes each field by texts that exist, and uses no id twice', () => {
    const described = [...html.matchAll(/aria-describedby="([^"]+)"/g)].flatMap(([, list = '']) =>
      list.split(' '),
    );
    expect(described.length).toBeGreaterThanOrEqual(NAMES.length);
    for (const id of described) expect(ids).toContain(id);
    expect(ids.size).toBe([...html.matchAll(/ id="/g)].length);
  });

  test('takes the focus to the summary without script too', () => {
    expect(html).toMatch(/<div[^>]*tabindex="-1"[^>]*autofocus=""/i);
  });
});

// The tokens are those of WCAG 2.2, section 7 (success criterion 1.3.5), as HTML lists them for autocomplete.
test('every field of an address says what it is for, so that it can be filled in', () => {
  const html = draw({}, <AddressFields countries={[{ value: 'GB', label: 'United Kingdom' }]} />);
  const controls = html.match(/<(?:input|select)[^>]* name="(?!model)[^>]*>/g) ?? [];
  expect(controls.map((control) => control.match(/autoComplete="([^"]+)"/i)?.[1])).toEqual([
    'name',
    'email',
    'tel',
    'address-line1',
    'address-line2',
    'postal-code',
    'address-level2',
    'country',
  ]);
});

test('an address that staff fill in takes nothing of what the browser knows of them', () => {
  const html = draw(
    {},
    <AddressFields of="customer" countries={[{ value: 'GB', label: 'United Kingdom' }]} emailHint="Ask." />,
  );
  const fills = [...html.matchAll(/autoComplete="([^"]+)"/gi)].map(([, fill]) => fill);
  expect(fills).toEqual(Array.from({ length: 8 }, () => 'off'));
  expect(html).not.toMatch(/\byour?\b/i);
});

// WCAG 2.2, 2.4.11: what stays at the foot of a phone is as low as it can be.
test('of the next action only the button stays at the foot, and what it sets off is read before it', () => {
  const html = draw({}, <SubmitBar label="Open my claim" consequence="You get a private link." />);
  const bar = html.slice(html.indexOf('class="submit-bar"'));
  expect(html).toContain('You get a private link.');
  expect(bar).toContain('Open my claim');
  expect(bar).not.toContain('You get a private link.');
});

test('whoever was signed out is led to sign in beside the form, never away from it', () => {
  const html = draw(
    { message: 'You were signed out.', first: { href: '/workshop/sign-in', label: 'Sign in' } },
    null,
  );
  expect(html).toMatch(/<a href="\/workshop\/sign-in" target="_blank" rel="noopener">Sign in<\/a>/);
});

describe('what was typed', () => {
  test('is all there again', () => {
    const html = draw(
      {
        errors: { serial: ['Wrong'] },
        values: {
          serial: 'QF-1',
          symptoms: 'hums',
          carrier: 'van',
          battery: 'no',
          accessories: ['case'],
          terms: 'yes',
          photos: ['jack.jpg'],
        },
      },
      every,
    );
    expect(html).toMatch(/<input[^>]*name="serial"[^>]*value="QF-1"/);
    expect(html).toContain('>hums</textarea>');
    expect(html).toContain('<option value="van" selected="">');
    expect(ticked(html)).toEqual(['no', 'case', 'yes']);
    expect(html).toContain('Choose again: jack.jpg');
  });

  test('wins over a default that the person had unticked', () => {
    const fields = (
      <>
        <CheckboxGroup name="accessories" label="Sent along" choices={CHOICES} defaultValues={['supply']} />
        <Checkbox name="insured" label="Insure it" defaultChecked />
      </>
    );
    expect(ticked(draw({}, fields))).toEqual(['supply', 'yes']);
    expect(ticked(draw({ errors: { serial: ['Wrong'] }, values: { serial: '' } }, fields))).toEqual([]);
  });

  test('never includes a password', () => {
    const html = draw(
      { errors: { email: ['Wrong'] }, values: { password: 'harbour wall' } },
      <TextField name="password" type="password" label="Password" />,
    );
    expect(html).not.toContain('harbour wall');
  });
});

test('an untouched form shows no summary and takes no focus', () => {
  const html = draw({}, every);
  expect(html).not.toMatch(/There is a problem|autofocus/i);
  expect(html).toContain('<input type="hidden" name="model" value="meridian-4"/>');
});

test('a record that changed meanwhile is shown with its changes, not as a mistake of the person', () => {
  const html = draw(
    {
      conflict: {
        message: 'Ines moved this job at 14:05.',
        changes: ['Stage: repaired'],
        href: '/workshop/jobs/J1',
      },
    },
    every,
  );
  expect(html).toContain('This changed while you had it open');
  expect(html).toContain('Stage: repaired');
  expect(html).toContain('href="/workshop/jobs/J1"');
  expect(html).not.toContain('There is a problem');
});

test('a success that stays on the page is told as a status', () => {
  expect(draw({ done: 'Saved.' }, every)).toMatch(/role="status".*Saved\./);
});

function ticked(html: string): string[] {
  const boxes = html.match(/<input[^>]*type="(?:radio|checkbox)"[^>]*>/g) ?? [];
  return boxes.filter((box) => /checked=""/.test(box)).map((box) => box.match(/value="([^"]*)"/)?.[1] ?? '');
}
