import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { parseForm } from '@/app/ui/forms/parse-form';
import { typedValues } from '@/app/ui/forms/typed-values';

const booking = z.object({
  serial: z.string({ error: 'Type the serial number' }),
  note: z.string().optional(),
  accessories: z.array(z.string()),
});

function posted(...entries: [string, string | File][]): FormData {
  const formData = new FormData();
  for (const [name, value] of entries) formData.append(name, value);
  return formData;
}

function refused(result: ReturnType<typeof parseForm>) {
  if (result.ok) throw new Error('the form was accepted');
  return result.state;
}

describe('a form that is right', () => {
  test('gives the data of the schema', () => {
    const result = parseForm(
      booking,
      posted(['serial', 'QF-0581'], ['accessories', 'case'], ['accessories', 'cable']),
      ['accessories'],
    );
    expect(result).toEqual({ ok: true, data: { serial: 'QF-0581', accessories: ['case', 'cable'] } });
  });

  test('has an empty list where nothing was ticked', () => {
    const result = parseForm(booking, posted(['serial', 'QF-0581']), ['accessories']);
    expect(result).toMatchObject({ ok: true, data: { accessories: [] } });
  });

  test('takes an empty optional field as absent', () => {
    const result = parseForm(booking, posted(['serial', 'QF-0581'], ['note', '']), ['accessories']);
    expect(result.ok && 'note' in result.data && result.data.note).toBe(undefined);
  });

  test('carries line ends as one character, as the browser counts them, and no NUL', () => {
    const result = parseForm(booking, posted(['serial', 'Q\0F'], ['note', 'hum\r\nand hiss']), [
      'accessories',
    ]);
    expect(result).toMatchObject({ ok: true, data: { serial: 'QF', note: 'hum\nand hiss' } });
  });

  test('takes chosen files and leaves out the empty one that a browser posts for no choice', () => {
    const schema = z.object({ photos: z.array(z.instanceof(File)) });
    const photo = new File(['x'], 'jack.jpg', { type: 'image/jpeg' });
    const none = new File([], '', { type: 'application/octet-stream' });
    const some = parseForm(schema, posted(['photos', photo], ['photos', none]), ['photos']);
    expect(some.ok && some.data.photos.map((file) => file.name)).toEqual(['jack.jpg']);
    expect(parseForm(schema, posted(['photos', none]), ['photos'])).toMatchObject({ data: { photos: [] } });
  });

  test("ignores React's own hidden fields and a forged prototype", () => {
    const result = parseForm(
      z.looseObject({ serial: z.string() }),
      posted(['$ACTION_ID_1', 'x'], ['__proto__', 'x'], ['serial', 'QF-1']),
    );
    expect(result).toEqual({ ok: true, data: { serial: 'QF-1' } });
  });
});

describe('a form that is wrong', () => {
  test('says so per field and gives back everything that was typed', () => {
    const state = refused(
      parseForm(booking, posted(['serial', ''], ['note', 'hums'], ['accessories', 'case']), ['accessories']),
    );
    expect(state.errors).toEqual({ serial: ['Type the serial number'] });
    expect(state.values).toEqual({ serial: '', note: 'hums', accessories: ['case'] });
    expect(state.message).toBe(undefined);
  });

  test('puts a fault of the whole form into the message', () => {
    const schema = z
      .object({ from: z.string(), to: z.string() })
      .refine((form) => form.from <= form.to, { error: 'The first day comes after the last' });
    const state = refused(parseForm(schema, posted(['from', '2026-12-09'], ['to', '2026-12-01'])));
    expect(state.message).toBe('The first day comes after the last');
    expect(state.errors).toEqual({});
  });

  test('puts a fault inside a list at the field of the list', () => {
    const schema = z.object({ days: z.array(z.string().length(10, 'Write each day in full')) });
    const state = refused(parseForm(schema, posted(['days', '2026-12-09'], ['days', '9 Dec']), ['days']));
    expect(state.errors).toEqual({ days: ['Write each day in full'] });
  });

  test('never gives a password back', () => {
    const schema = z.object({ email: z.email(), password: z.string(), newPassword: z.string() });
    const state = refused(
      parseForm(schema, posted(['email', 'ines'], ['password', 'harbour wall'], ['newPassword', 'tide'])),
    );
    expect(state.values).toEqual({ email: 'ines' });
  });

  test('gives back the names of chosen files, so that the person can choose them again', () => {
    const schema = z.object({ serial: z.string(), photos: z.array(z.instanceof(File)) });
    const form = posted(
      ['serial', ''],
      ['photos', new File(['x'], 'jack.jpg')],
      ['photos', new File(['x'], 'pads.jpg')],
    );
    const names = { serial: '', photos: ['jack.jpg', 'pads.jpg'] };
    expect(refused(parseForm(schema, form, ['photos'])).values).toEqual(names);
    // Also where nobody said that they are a list, and after the form was parsed: one bad photo empties the field.
    expect(refused(parseForm(schema, form)).values).toEqual(names);
    expect(typedValues(form)).toEqual(names);
  });

  test('keeps every value of a name that came more than once, a list or not', () => {
    expect(typedValues(posted(['kept', 'one'], ['kept', 'two'], ['serial', 'QF-1']))).toEqual({
      kept: ['one', 'two'],
      serial: 'QF-1',
    });
  });

  // As a page of Next 16 reads the empty field that a browser sends: "Choose again: undefined" stood at it.
  test.each(['', 'undefined'])('has no names where no file was chosen, read as “%s”', (name) => {
    const none = new File([], name, { type: 'application/octet-stream' });
    expect(typedValues(posted(['photos', none]))).toEqual({ photos: [] });
    const schema = z.object({ serial: z.string(), photos: z.array(z.instanceof(File)) });
    expect(refused(parseForm(schema, posted(['photos', none]), ['photos'])).values).toEqual({ photos: [] });
  });
});
