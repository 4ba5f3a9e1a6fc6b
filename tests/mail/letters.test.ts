import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { drawLetter } from '@/emails/draw-letter';
import { ink } from '@/emails/ink';
import type { Setting } from '@/emails/letter';
import { writeLetter } from '@/emails/letters';
import { samples } from '@/emails/samples/all';
import type { Sample } from '@/emails/samples/sample';
import { sampleSetting } from '@/emails/samples/setting';
import { nextForCustomer } from '@/lib/jobs/rules/next-step';
import { mailTemplates, readContent } from '@/lib/mail/rules/content';
import { isToWorkshop } from '@/lib/mail/rules/words';
import { readingGrade } from '@/tests/warranty/reading-grade';

const workshop: Setting['workshop'] = {
  name: 'Quay & Alder',
  addressLines: ['4 Slip Lane', 'Sandmouth QM1 4QA'],
  email: 'bench@example.org',
  phone: '01632 960101',
  country: 'GB',
  locale: 'en-GB',
  currency: 'GBP',
  answerWithin: '2 working days',
  paymentText: 'Bank transfer with the job number.',
  bankHolder: 'Quay & Alder',
  iban: 'GB33BUKB20201555555555',
  bic: '',
  payLink: 'https://pay.example.org/quay/{reference}?sum={amount}&in={currency}',
};

async function draw(sample: Sample, changes: Partial<Setting['workshop']> = {}) {
  const setting = sampleSetting(sample, { ...workshop, ...changes }, 'https://post.example.org');
  const letter = writeLetter(sample.content, setting);
  return { ...(await drawLetter(letter, setting)), to: letter.to, setting };
}

function sampleOf(name: string): Sample {
  const found = samples.find((sample) => sample.name === name);
  if (!found) throw new Error(`no sample called ${name}`);
  return found;
}

test('every template has a sample that reads back as it was written', () => {
  const shown = new Set(samples.map((sample) => sample.content.template));
  expect([...shown].toSorted()).toEqual(mailTemplates.options.toSorted());
  for (const { content } of samples) expect(readContent(content)).toEqual(content);
});

test.each([
  ['a template that no version wrote', { template: 'parcel-lost', data: {} }],
  ['a name that every object has', { template: 'constructor', data: {} }],
  ['the facts of another template', { template: 'job-booked', data: { reason: 'x' } }],
  ['facts that lack one', { template: 'promise-moved', data: { from: '2026-12-09', to: '2026-12-14' } }],
])('%s is not read', (_name, stored) => {
  expect(() => readContent(stored)).toThrow(z.ZodError);
});

describe.each(samples)('$name', (sample) => {
  test('has no hole in it', async () => {
    const { subject, html, text } = await draw(sample);
    for (const part of [subject, html, text]) {
      expect(part).not.toMatch(/undefined|NaN|\[object|Invalid Date|\bnull\b/);
    }
    expect(html).not.toMatch(/<(p|h1|a|title)\b[^>]*>\s*<\/\1>/);
    expect(text).not.toMatch(/\n{4,}| {2,}/);
    expect(subject.length).toBeGreaterThan(10);
    expect(subject.length).toBeLessThan(79);
  });

  test('says what happens next, when and what it costs, in both bodies', async () => {
    const { html, text } = await draw(sample);
    for (const term of ['What happens next', 'When', 'What it costs']) {
      expect(html).toContain(`>${term}</p>`);
      expect(text).toMatch(new RegExp(`^${term}\\n\\S`, 'm'));
    }
  });

  test('carries the number and the address of the job in its text', async () => {
    const { text, html, to, setting } = await draw(sample);
    expect(text).toContain(setting.job.number);
    const address = to === 'workshop' ? setting.desk : setting.link;
    if (sample.content.template === 'job-cancelled' || !address) return;
    expect(text).toContain(address);
    expect(html).toContain(`href="${address}"`);
  });

  test('loads nothing from elsewhere and runs nothing', async () => {
    const { html } = await draw(sample);
    expect(html).not.toMatch(/<(script|img|iframe|form|link)\b|\bsrc=|url\(|@import|javascript:/i);
  });

  test('is read at the age of 11 to 12', async () => {
    const { text } = await draw(sample);
    // What the law words itself comes at the end of the booking's mail.
    const [ours = ''] = text.split(/^Right (?:of withdrawal|to cancel)$/m);
    const own = ours.split('\n').filter((line) => /\p{Ll}.*[.?!]$/u.test(line) && !line.includes('://'));
    expect(readingGrade(own.join('\n'))).toBeLessThan(6);
  });
});

test('the messages that go to the workshop are those the sheet does not take for the customer’s', () => {
  for (const sample of samples) {
    const { to } = writeLetter(sample.content, sampleSetting(sample, workshop, 'https://post.example.org'));
    expect(to === 'workshop', sample.name).toBe(isToWorkshop(sample.content.template));
  }
});

describe('money and days', () => {
  test('a claim job is said to be free, in words and figures', async () => {
    const toCustomer = samples.filter(
      (sample) => sample.job?.kind === 'claim' && sample.content.template !== 'claim-contested',
    );
    expect(toCustomer.length).toBeGreaterThan(5);
    for (const sample of toCustomer) {
      const { text } = await draw(sample);
      expect(text, sample.name).toContain('£0.00');
      expect(text, sample.name).toMatch(/free of charge|Nothing is left to pay/);
    }
  });

  test('follow the workshop’s currency and the way it writes amounts', async () => {
    const yen = await draw(sampleOf('Approval asked'), { currency: 'JPY', locale: 'ja-JP' });
    expect(yen.text).toContain('13,150');
    expect(yen.text).not.toContain('131.50');
    const euro = await draw(sampleOf('Promise moved'), { currency: 'EUR', locale: 'de-DE' });
    expect(euro.text).toContain('Monday 14 December 2026');
    expect(euro.text).toContain('89,00');
    // The words stay English, those of the days too (WCAG 2.2, 3.1.1 and 3.1.2), as on the pages.
    expect(euro.html).toContain('lang="en-GB"');
    expect(euro.html).not.toContain('lang="de');
  });

  test('a booking says how long it takes from the day the unit is here, and from when where work has to wait', async () => {
    const booked = await draw(sampleOf('Booked'));
    expect(booked.text).toContain('Our price list reckons with 5 working days from then;');
    const waits = await draw(sampleOf('Booked, with a right to withdraw'));
    expect(waits.text).toContain('from then, or from Tuesday 15 December 2026 if that is later;');
    const early = await draw(sampleOf('Booked, with a right to withdraw and an early start'));
    expect(early.text).toContain('Our price list reckons with 5 working days from then;');
  });

  test('an answer costs what the customer was told, the difference said plainly', async () => {
    const { text } = await draw(sampleOf('Approval asked'));
    for (const amount of ['£89.00 with tax', '£131.50 with tax', '£42.50 more', 'return fee of £12.00']) {
      expect(text).toContain(amount);
    }
    expect(text).toContain('Saturday 2 January 2027');
  });
});

describe('an answer that replaces an invoice issued ahead', () => {
  test('names the new one, what is left of it and by when, to whom paid the old one', async () => {
    const { text } = await draw(sampleOf('Approval recorded: yes, paid before'));
    expect(text).toContain('£42.50 with tax is left to pay. Invoice 2026-00042 is credited');
    expect(text).toContain('Invoice 2026-00044 takes its place');
    expect(text).toContain('by Wednesday 23 December 2026');
    expect(text).not.toContain('You pay when it is ready');
  });

  test('is paid once: a person enters what was paid, and within what time', async () => {
    const { text } = await draw(sampleOf('Ready, something to pay'));
    expect(text).toContain(
      'Please do not pay twice. A person enters it on the job page within 2 working days',
    );
    expect((await draw(sampleOf('Ready, nothing to pay'))).text).not.toContain('pay twice');
  });

  test('says what comes back after a no, and asks for nothing', async () => {
    const { text } = await draw(sampleOf('Approval recorded: no, paid before'));
    expect(text).toContain('We give £77.00 back the way it came, within 14 days.');
    expect(text).not.toContain('Please pay');
  });

  test.each([
    ['Withdrawal recorded, nothing to pay', '2026-00042 is credited'],
    ['Cannot be repaired, paid before', '2026-00044 takes its place'],
  ])('“%s” says so too', async (name, said) => {
    expect((await draw(sampleOf(name))).text).toContain(said);
  });
});

describe('what a later no costs, in the mail of a booking', () => {
  test('is the return fee alone without an inspection fee', async () => {
    const { text } = await draw(sampleOf('Booked'));
    expect(text).toContain('you pay the return fee of £9.60, and nothing else.');
  });

  test('is both fees where the agreed price has an inspection fee', async () => {
    const { text } = await draw(sampleOf('Booked, with an inspection fee in its price'));
    expect(text).toContain('the inspection fee of £18.00 and the return fee of £9.60, £27.60 together');
  });

  test('is nothing where no return fee was agreed to', async () => {
    const { text } = await draw({ ...sampleOf('Booked'), job: { returnFee: 0 } });
    expect(text).toContain('the unit comes back free of charge (£0.00).');
  });
});

test.each(samples.filter(({ name }) => /inspection (alone|sent|lapses|accepted)/.test(name)))(
  'the mail “$name” sells no repair',
  async (sample) => {
    const { text } = await draw(sample);
    expect(text).toContain('£18.00 with tax, to ');
    expect(text).not.toMatch(/when the repair is done|repair is booked|price for the repair of/);
  },
);

test('a unit that arrived for an inspection alone is promised a price, and no repair', async () => {
  const { text } = await draw(sampleOf('Arrived for an inspection'));
  expect(text).toContain('send you a price for the repair. Nothing is repaired before you have said yes');
  expect(text).not.toContain('and repair it');
});

test.each(samples.filter(({ name }) => /: yes, after an insp|asked, after an insp/.test(name)))(
  'the mail “$name” speaks of a repair that has not begun',
  async (sample) => {
    const { subject, text } = await draw(sample);
    expect(text).toContain('£60.00');
    expect(subject + text).not.toMatch(
      /new price|repair goes on|back on the bench|Agreed so far|Difference|changes/i,
    );
  },
);

test('a claim’s unit that arrived is promised a ruling and a free inspection, not a free repair', async () => {
  const { text } = await draw(sampleOf('Arrived on a claim'));
  expect(text).toContain('Our ruling comes within 2 working days.');
  expect(text).toContain(
    'If the claim is covered, we promise it ready to go back by Wednesday 9 December 2026.',
  );
  expect(text).toContain('The inspection is free of charge (£0.00).');
  expect(text).not.toMatch(/This job is free|repair it\./);
});

test.each(samples.filter(({ name }) => name.includes('the first price,')))(
  'the mail “$name” calls it new nowhere',
  async (sample) => {
    const { subject, text } = await draw(sample);
    expect(text).toContain('£60.00');
    expect(subject + text).not.toMatch(/new price|more than you agreed/i);
  },
);

describe('a price that lapsed', () => {
  const lapsed = 'Approval asked, no answer came';

  test('leaves a unit alone for which nothing was agreed', async () => {
    const { text } = await draw(sampleOf('Approval asked, the first price, no answer came'));
    expect(text).toContain('You have agreed to nothing, and nothing was done to your unit.');
  });

  test('takes nothing from what was agreed and begun before', async () => {
    const { text } = await draw(sampleOf(lapsed));
    expect(text).toContain('What you agreed to before still stands. We have done nothing more to your unit.');
    expect(text).not.toMatch(/agreed to nothing|nothing was done/);
  });

  test('leaves the covered part of a claim free', async () => {
    const { text } = await draw({ ...sampleOf(lapsed), job: { kind: 'claim', agreed: 0 } });
    expect(text).toContain('What your certificate covers stays free of charge.');
    expect(text).not.toMatch(/you agreed to before|nothing was done/);
  });
});

test('a yes to the first price starts a repair, and a later one lets it go on', async () => {
  const [first, later] = [
    await draw(sampleOf('Approval recorded: yes to the first price')),
    await draw(sampleOf('Approval recorded: yes')),
  ];
  expect(first.text).toContain('Thank you, your yes is recorded');
  expect(first.html + first.text).not.toMatch(/goes on at|repair goes on|back on the bench/);
  expect(later.text).toContain('Thank you, the repair goes on');
  expect(later.text).toContain('back on the bench');
});

test.each([
  ['Ready, something to pay', '£89.00'],
  ['Ready, nothing to pay', null],
])('the mail “%s” names the same day for posting as the page', async (name, owed) => {
  const page = nextForCustomer(
    {
      stage: 'ready',
      kind: 'repair',
      promisedOn: null,
      owed,
      startAfter: null,
      offerUntil: null,
      carrier: '',
      transitDays: 5,
      ruling: null,
      hasCertificate: false,
      decision: null,
    },
    'en-GB',
  );
  const [told = ''] = page.match(/^We post it on the .*?working day.*?\./) ?? [];
  expect(told).toContain('working day');
  expect((await draw(sampleOf(name))).text).toContain(told);
});

test.each([
  ['Message from the workshop', 'The job goes on as agreed'],
  ['Message from the workshop about a price', 'The price stays as it is'],
])('“%s” says what goes on meanwhile, and one at the end of a job nothing', async (name, said) => {
  expect((await draw(sampleOf(name))).text).toContain(said);
  const { text } = await draw(sampleOf('Message from the workshop once the job is over'));
  expect(text).not.toContain('in the meantime');
});

test('a copy of a certificate names the day it covers until, where that is later than it states', async () => {
  const { text } = await draw(sampleOf('Certificate sent again, with days given back'));
  expect(text).toContain('It covers until the end of Wednesday 22 December 2027.');
  expect(text).not.toContain('Cover ends on the days that the certificate states');
});

describe('a unit that its carrier brought back', () => {
  test('is told of no certificate to come, and of its posting as on its page', async () => {
    const { text } = await draw(sampleOf('Ready once more, after its parcel came back'));
    expect(text).toContain('Your certificate stands as it was issued.');
    expect(text).not.toContain('come with your certificate');
    expect(text).toContain('next working day');
  });

  test('waits for its address in the mail where it does on the page', async () => {
    const { text } = await draw(sampleOf('Ready once more, its address not confirmed'));
    expect(text).toContain('under “Goes back to”');
    expect(text).not.toContain('next working day');
  });

  test('was posted before work on it began again', async () => {
    const { text } = await draw(sampleOf('Worked on again, after its parcel came back'));
    expect(text).not.toContain('Before it was posted');
  });
});

test('a payment after the unit left brings no news of it', async () => {
  const { text } = await draw(sampleOf('Payment received after the unit left'));
  expect(text).not.toContain('news of your unit');
});

describe('a ruling', () => {
  const rulings = samples.filter((sample) => sample.content.template === 'claim-ruled');

  test('blames nobody, whatever it says', async () => {
    for (const sample of rulings) {
      const { text } = await draw(sample);
      expect(text, sample.name).not.toMatch(
        /your (own )?fault|you (have )?(broke|dropped|caused|damaged|misused)|misuse|negligen|careless|reject/i,
      );
    }
  });

  test('that is not covered says what is still possible: a paid job, one contest, rights by law', async () => {
    const { text } = await draw(sampleOf('Claim ruled: not-covered'));
    expect(text).toContain('repaired as a paid job');
    // A price lapses, so nobody is told to take their time.
    expect(text).toContain('a price and the day until which it holds');
    expect(text).toContain('Tell us once, in your own words');
    // Consumer Rights Act 2015 s.55: repeat performance, whatever the certificate says.
    expect(text).toContain('Consumer Rights Act 2015, sections 49 and 55');
  });

  test.each(['not-covered', 'partly'])('that stays %s keeps the price that was agreed to', async (ruling) => {
    const sample = sampleOf(`Claim ruled: ${ruling}, at an agreed price`);
    const { text } = await draw(sample);
    expect(text).toContain('£60.00 with tax');
    expect(text).toContain('as you agreed');
    expect(text).not.toMatch(/we send you a price|until you have answered|say yes or no/i);
  });

  test('on a contested claim offers no second contest', async () => {
    const sample = sampleOf('Claim ruled: not-covered');
    if (sample.content.template !== 'claim-ruled') throw new Error('not a ruling');
    const again: Sample = {
      ...sample,
      content: { ...sample.content, data: { ...sample.content.data, mayContest: false } },
    };
    const { text } = await draw(again);
    expect(text).not.toContain('Tell us once');
    expect(text).toContain('Your rights by law stay open.');
  });

  test.each(['not-covered', 'returned-free'])(
    'that is %s says that postage is not paid back',
    async (name) => {
      expect((await draw(sampleOf(`Claim ruled: ${name}`))).text).toContain(
        'is paid back only where a claim is covered',
      );
    },
  );

  test('without words of its own is not written at all', async () => {
    const data = { claimNumber: 'C7TW3M9HB', ruling: 'maybe', cause: 'x', reasonText: 'y', mayContest: true };
    await expect(draw({ name: '', content: { template: 'claim-ruled', data } })).rejects.toThrow('maybe');
  });

  test('that is covered asks nothing of the customer but where their postage goes', async () => {
    const { text } = await draw(sampleOf('Claim ruled: covered'));
    expect(text).toContain(
      'We pay it back. Tell us how much it was and where to send it, with a photo of the receipt, on the job page.',
    );
    expect(text).not.toContain('You need to do nothing.');
    expect(text).not.toContain('Tell us once');
  });
});

test('who reads of a message in a mail is sent where it can be settled', async () => {
  const content = { template: 'message-from-customer' as const, data: { text: 'Thank you!' } };
  expect((await draw({ name: '', content })).text.replace(/\s+/g, ' ')).toContain(
    'or somebody says on the job that it needs no answer.',
  );
});

test('what a person wrote stays words, with its line breaks', async () => {
  const text = 'One <b>line</b> & "two"\n<img src=x onerror=alert(1)>';
  const drawn = await draw({ name: '', content: { template: 'message-from-customer', data: { text } } });
  expect(drawn.html).not.toContain('<img');
  expect(drawn.html).toContain('&lt;img src=x onerror=alert(1)&gt;');
  expect(drawn.html).toContain('white-space:pre-line');
  expect(drawn.text).toContain('One <b>line</b> & "two"');
});

/** Relative luminance and contrast, WCAG 2.2, definitions under success criterion 1.4.3. */
function contrast(one: string, two: string): number {
  const [light = 0, dark = 0] = [luminance(one), luminance(two)].toSorted((a, b) => b - a);
  return (light + 0.05) / (dark + 0.05);
}

function luminance(colour: string): number {
  const [red = 0, green = 0, blue = 0] = [1, 3, 5].map((at) => {
    const share = Number.parseInt(colour.slice(at, at + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

test.each(['light', 'dark'] as const)(
  'letters stand out from their ground by day and night: %s',
  (scheme) => {
    const colour = ink[scheme];
    for (const ground of [colour.ground, colour.sheet, colour.stub]) {
      for (const letters of [colour.ink, colour.soft]) expect(contrast(letters, ground)).toBeGreaterThan(4.5);
    }
    expect(contrast(colour.action, colour.sheet)).toBeGreaterThan(4.5);
    expect(contrast(colour['on-action'], colour.action)).toBeGreaterThan(4.5);
  },
);

test('an arrival speaks of photos only where some were taken', async () => {
  expect((await draw(sampleOf('Arrived as booked'))).text).toContain('taken photos of how it arrived');
  expect((await draw(sampleOf('Arrived on a claim'))).text).not.toMatch(/photo/i);
});

test('money for a unit that stands ready says when it is posted', async () => {
  expect((await draw(sampleOf('Payment received, the unit is ready'))).text).toContain(
    'We post it on the next working day.',
  );
  expect((await draw(sampleOf('Payment received, the unit is ready and some is left'))).text).toContain(
    'We post it on the working day after the rest is here.',
  );
  const waived = (await draw(sampleOf('Payment received, the unit leaves although some is left'))).text;
  expect(waived).toContain('We post it on the next working day.');
  expect(waived).toContain('£49.00 with tax is left to pay. It stays owed.');
  expect((await draw(sampleOf('Payment received'))).text).not.toContain('We post it');
});
