import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test } from 'vitest';
import { ActionForm } from '@/app/ui/forms/action-form';
import type { FormState } from '@/app/ui/forms/form-state';
import { PhotosField } from '@/app/ui/forms/photos-field';

async function keep(before: FormState): Promise<FormState> {
  return before;
}

function draw(answer: FormState): string {
  return renderToStaticMarkup(
    <ActionForm action={keep} initial={answer}>
      <PhotosField label="Photos" most={8} optional />
    </ActionForm>,
  );
}

const SLIPS = ['facts.hash.Buchse%20gr%C3%B6%C3%9Fer.jpg', 'facts.hash.%3Cb%3E.png'];

describe('photos that are here already', () => {
  test('are ticked boxes with the names they had, so that a form sent again brings them along', () => {
    const html = draw({ values: { kept: SLIPS }, errors: { photos: ['a.txt: This file is not a photo.'] } });
    const boxes = html.match(/<input[^>]*name="kept"[^>]*>/g) ?? [];
    expect(boxes).toHaveLength(2);
    for (const [at, box] of boxes.entries()) {
      expect(box).toContain('checked=""');
      expect(box).toContain(`value="${SLIPS[at]}"`);
    }
    expect(html).toContain('>Buchse größer.jpg</label>');
    expect(html).toContain('>&lt;b&gt;.png</label>');
    expect(html).toContain('a.txt: This file is not a photo.');
  });

  test('are not spoken of while there are none', () => {
    for (const state of [{}, { values: { kept: [] } }, { values: { kept: '' } }]) {
      expect(draw(state)).not.toContain('here already');
    }
  });
});
