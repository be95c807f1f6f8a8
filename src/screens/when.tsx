/** When something happened, where a person may say that it was earlier: one field, empty for now. */
import * as z from 'zod/mini';
import { statedWhen } from '../safety/stated-time';
import { TextField } from '../ui/text-field';
import { useShell } from './shell';
import { words } from './words';

/** Day and hour as the field holds them; a draft of an earlier version has none. */
export const WhenDraft = z._default(z.string(), '');

/** @returns the moment for `perform` (undefined: now), or null when it is no time or has not come yet */
export function momentStated(when: string, now: string): string | undefined | null {
  const stated = statedWhen(when, now);
  if (stated.state === 'wrong') return null;
  return stated.state === 'earlier' ? stated.at : undefined;
}

/** A day without its hour: to the page such a field is empty, and empty would say now. */
const halfTyped = 'half';

type Props = { readonly value: string; readonly onInput: (when: string) => void };

export function When({ value, onInput }: Props) {
  const { now } = useShell();
  return (
    <TextField
      label={words.when.label}
      kind="datetime-local"
      value={value === halfTyped ? '' : value}
      hint={value === '' ? words.when.empty : undefined}
      error={momentStated(value, now.value) === null ? words.when.fault : undefined}
      onInput={onInput}
      onBlur={({ currentTarget }) => {
        if (currentTarget.validity.badInput) onInput(halfTyped);
        else if (value === halfTyped) onInput('');
      }}
    />
  );
}
