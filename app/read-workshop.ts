import 'server-only';
import { cache } from 'react';
import { readWorkshop as readFromDatabase } from '@/lib/workshop/records';

/**
 * The workshop and its settings, read once while a page is drawn, however many of its parts ask. An action is no part of a
 * page and reads anew, and so does the page that is drawn after it.
 */
export const readWorkshop = cache(() => readFromDatabase());
