import { afterAll, expect } from 'vitest';
import { config } from '@/lib/config';

// Most files share their process with others: what one of them left in the settings, the next would be tested with.
const found = { ...config };
afterAll(() => expect({ ...config }, 'settings as the file found them').toEqual(found));
