import { describe, expect, it } from 'vitest';
import { CAUSES } from '@/lib/warranty/rules/causes';
import { rulingFor } from '@/lib/warranty/rules/ruling';

describe('a claim that came after cover had ended', () => {
  it.each(CAUSES)('is not covered when no person lets it in, with the cause %s', (cause) => {
    const found = { cause, alsoFound: null, isEvidenceClear: true, evidencePhotos: 1 };
    expect(rulingFor({ ...found, isWithinTerm: false }).ruling).toBe('not-covered');
  });

  it('is ruled by its cause once a person has let it in', () => {
    const found = { alsoFound: null, isEvidenceClear: true, evidencePhotos: 1, isWithinTerm: true };
    expect(rulingFor({ ...found, cause: 'workmanship' }).ruling).toBe('covered');
    expect(rulingFor({ ...found, cause: 'no-fault-found' }).ruling).toBe('returned-free');
  });
});
