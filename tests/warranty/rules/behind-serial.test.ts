import { describe, expect, it } from 'vitest';
import { day } from '@/lib/calendar/day';
import { behindSerial } from '@/lib/warranty/rules/behind-serial';
import type { Assessment } from '@/lib/warranty/rules/reasons';

const line = { lineId: 'work-1', description: 'USB-C socket replaced' };
const CLOSE: Assessment = {
  answer: 'confirm-serial',
  reasons: [{ code: 'serial-close', serial: 'HW2-10480-K' }],
  needs: ['serial-photo', 'person-confirms-serial'],
  nextStep: { kind: 'send-serial-photo' },
};
const same = { code: 'serial-same', serial: 'HW2-10480-K' } as const;

function asSame(rest: Omit<Assessment, 'reasons'> & { reasons: Assessment['reasons'] }): Assessment {
  return { ...rest, reasons: [same, ...rest.reasons] };
}

const COVERED = asSame({
  answer: 'covered-subject-to-inspection',
  reasons: [{ code: 'line-covers', ...line, endsOn: day('2027-12-03') }],
  needs: ['inspection'],
  nextStep: { kind: 'open-claim', until: day('2027-12-03') },
});
const IN_GRACE = asSame({
  answer: 'lapsed',
  reasons: [{ code: 'in-grace', ...line, endedOn: day('2027-12-03'), graceUntil: day('2027-12-10') }],
  needs: ['person-decides'],
  nextStep: { kind: 'ask-a-person', until: day('2027-12-10') },
});
const LAPSED = asSame({
  answer: 'lapsed',
  reasons: [{ code: 'line-ended', ...line, endedOn: day('2027-12-03'), lastClaimDay: day('2027-12-03') }],
  needs: ['fee-agreed'],
  nextStep: { kind: 'book-paid-repair' },
});

describe('what stands behind a close serial', () => {
  it('keeps asking for the photo where the right serial would open a claim, and names the cover', () => {
    const { assessment, isLate } = behindSerial(CLOSE, COVERED);
    expect(assessment.answer).toBe('confirm-serial');
    expect(assessment.nextStep).toEqual({ kind: 'send-serial-photo' });
    expect(assessment.reasons.map((reason) => reason.code)).toEqual(['serial-close', 'line-covers']);
    expect(assessment.needs).toEqual(['serial-photo', 'person-confirms-serial', 'inspection']);
    expect(isLate).toBe(false);
  });

  it('is late in the days of grace, and says so', () => {
    const { assessment, isLate } = behindSerial(CLOSE, IN_GRACE);
    expect(assessment.answer).toBe('confirm-serial');
    expect(assessment.reasons.map((reason) => reason.code)).toEqual(['serial-close', 'in-grace']);
    expect(assessment.needs).toContain('person-decides');
    expect(isLate).toBe(true);
  });

  it('tells the stronger ground where a photo would be asked for in vain', () => {
    const { assessment, isLate } = behindSerial(CLOSE, LAPSED);
    expect(assessment.answer).toBe('lapsed');
    expect(assessment.nextStep).toEqual({ kind: 'book-paid-repair' });
    expect(assessment.reasons.map((reason) => reason.code)).toEqual(['serial-close', 'line-ended']);
    expect(isLate).toBe(false);
  });

  it('never says that a close serial is the same', () => {
    for (const second of [COVERED, IN_GRACE, LAPSED]) {
      expect(behindSerial(CLOSE, second).assessment.reasons).not.toContainEqual(same);
    }
  });

  it('refuses a first answer that is not about a close serial', () => {
    expect(() => behindSerial(LAPSED, COVERED)).toThrow('Not a close serial: lapsed');
    expect(() => behindSerial(CLOSE, CLOSE)).toThrow('for the same serial');
  });
});
