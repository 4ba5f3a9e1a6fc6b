'use client';
import type { ReactNode } from 'react';
import { TextField } from './text-field';

type MoneyFieldProps = {
  name: string;
  label: ReactNode;
  hint?: ReactNode;
  optional?: boolean | undefined;
  currency: string;
  defaultValue?: string | undefined;
};

/**
 * An amount of money typed as people write it ("12.50"); read it in the action with readMoney(text, currency).
 *
 * ```tsx
 * <MoneyField name="price" label="Price with tax" currency="GBP" defaultValue="48.00" />
 * ```
 */
export function MoneyField({ currency, ...rest }: MoneyFieldProps) {
  return (
    <TextField
      {...rest}
      before={<span className="field-mono">{currency}</span>}
      inputMode="decimal"
      autoComplete="off"
      width="short"
      mono
      maxLength={16}
    />
  );
}
