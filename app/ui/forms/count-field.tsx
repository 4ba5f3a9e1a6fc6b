'use client';
import { TextField, type TextFieldProps } from './text-field';

/**
 * A whole number in a short box, with its unit behind it where it has one.
 *
 * ```tsx
 * <CountField name="minutes" label="Minutes at the bench" unit="min" />
 * ```
 */
export function CountField(props: Omit<TextFieldProps, 'inputMode' | 'width' | 'type'>) {
  return <TextField {...props} inputMode="numeric" width="short" />;
}
