import { expect, test } from 'vitest';
import { type NamedProblem, namedProblem } from '@/lib/warranty/rules/renewal-named';

const LINES = ['work-1', 'part-1', 'work-2', 'work-3'];

test.each<[string, { named: string[]; fittedAgain?: string[]; isOwner?: boolean }, NamedProblem | null]>([
  ['what the symptom says', { named: ['work-1'] }, null],
  ['more of what ran', { named: ['work-1', 'work-2'] }, null],
  ['another line in its place', { named: ['work-2'] }, 'fewer'],
  ['another line in its place, by the owner', { named: ['work-2'], isOwner: true }, null],
  ['a line that had ended', { named: ['work-1', 'work-3'] }, 'ended'],
  ['a line that had ended, by the owner', { named: ['work-1', 'work-3'], isOwner: true }, null],
  ['nothing', { named: [], isOwner: true }, 'none'],
  ['nothing beside a part, by the bench', { named: [], fittedAgain: ['part-1'] }, 'fewer'],
  ['nothing beside a part, by the owner', { named: [], fittedAgain: ['part-1'], isOwner: true }, null],
  ['what is on no paper', { named: ['work-9'], isOwner: true }, 'unknown'],
])('naming %s', (_name, { named, fittedAgain = [], isOwner = false }, problem) => {
  expect(
    namedProblem({
      named,
      lines: LINES,
      byRule: ['work-1'],
      byOwner: null,
      fittedAgain,
      ended: ['work-3'],
      isOwner,
    }),
  ).toBe(problem);
});

test('a part that was fitted again needs no naming', () => {
  const asked = { lines: LINES, byOwner: null, ended: [], isOwner: false };
  const fitted = { byRule: ['work-1', 'part-1'], fittedAgain: ['part-1'] };
  expect(namedProblem({ ...asked, ...fitted, named: ['work-1'] })).toBeNull();
});

test('what a claim that was let in renews had ended, and stays named', () => {
  const asked = { lines: LINES, byRule: ['work-3'], fittedAgain: [], ended: ['work-3'], isOwner: false };
  expect(namedProblem({ ...asked, byOwner: null, named: ['work-3'] })).toBeNull();
});

test.each<[string, string[], Partial<Parameters<typeof namedProblem>[0]>, NamedProblem | null]>([
  ['leaves out what the owner added', ['work-1'], { byOwner: ['work-1', 'work-2'] }, 'fewer'],
  ['leaves out what had ended and the owner renewed', ['work-1'], { byOwner: ['work-1', 'work-3'] }, 'fewer'],
  ['adds to it', ['work-1', 'work-2', 'work-3'], { byOwner: ['work-1', 'work-3'] }, null],
  [
    'adds to what the owner named in place of the symptom',
    ['work-2', 'part-1'],
    { byOwner: ['work-2'] },
    null,
  ],
  ['adds to nothing beside a part', ['work-2'], { byOwner: [], fittedAgain: ['part-1'] }, null],
  ['names another line once that part is put back', ['work-2'], { byOwner: [] }, 'fewer'],
  ['adds another line that had ended', ['work-1', 'work-3'], { byOwner: ['work-1'] }, 'ended'],
])('after the owner the bench %s', (_name, named, over, problem) => {
  const asked = { lines: LINES, byRule: ['work-1'], fittedAgain: [], ended: ['work-3'], isOwner: false };
  expect(namedProblem({ ...asked, named, byOwner: null, ...over })).toBe(problem);
});
