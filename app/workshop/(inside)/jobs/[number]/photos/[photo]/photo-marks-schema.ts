import { z } from 'zod';
import { MOST_MARKS, markOf } from '@/lib/jobs/rules/photo-marks';
import { optionalText } from '@/lib/jobs/rules/typed-text';

/** Caption and marks as posted: one line a mark, those without a place left out. */
export const photoMarksForm = z
  .looseObject({ caption: optionalText(200) })
  .transform(({ caption, ...rest }) => {
    const text = (name: string) => {
      const value = rest[name];
      return typeof value === 'string' ? value : '';
    };
    const marks = Array.from({ length: MOST_MARKS }, (_, at) =>
      markOf({
        column: text(`column-${at}`),
        row: text(`row-${at}`),
        x: text(`x-${at}`),
        y: text(`y-${at}`),
        text: text(`text-${at}`),
      }),
    );
    return { caption, marks: marks.filter((mark) => mark !== null) };
  });
