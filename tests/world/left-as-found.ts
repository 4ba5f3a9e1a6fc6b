import { afterAll, beforeEach, expect } from 'vitest';
import { config } from '@/lib/config';
import { forgetRemembered } from '@/lib/remembered';

// Most files share their process with others: what one of them left in the settings, the next would be tested with.
const found = { ...config };
afterAll(() => expect({ ...config }, 'settings as the file found them').toEqual(found));

// Nor may a test be given what was read for another: the closing days of the demonstration, for one.
beforeEach(forgetRemembered);
